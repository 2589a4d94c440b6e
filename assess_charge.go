package satline

import (
	"errors"
	"fmt"
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/refrigerant"
)

// judgeCharge lets package charge choose the method, asks whether it applies
// now and whether its readings can be believed, and only then compares measured
// with target.
func (j *job) judgeCharge() error {
	situation := j.situation()
	method, obstacles := charge.Choose(situation)
	j.obstacles = obstacles
	if method == charge.Approach {
		for _, o := range charge.Obstacles(situation, method) {
			if !slices.ContainsFunc(obstacles, func(first charge.Obstacle) bool { return first.Code == o.Code }) {
				obstacles = append(obstacles, o)
			}
		}
		j.obstacles = obstacles
	}
	if method == charge.WeighIn {
		j.chargeNotNow(situation.Metering.Method(), obstacles)
		return j.judgeBothSides()
	}
	j.charge.Method = method.String()
	if wanting := j.wanting(method); len(wanting) > 0 {
		j.charge.Outcome, j.charge.Missing = ChargeNotMeasured, wanting
		j.charge.Reasons = []string{fmt.Sprintf("the %v method needs readings that are not there: %s", method, labelled(wanting))}
		j.charge.Instead = []string{"read the " + labelled(wanting)}
		return nil
	}
	measured, err := j.measure(method)
	if err != nil {
		return rangeProblem("readings."+methodFields[method][0], err)
	}
	target, err := j.target(method)
	var notNow *charge.NotNowError
	if errors.As(err, &notNow) {
		if j.contradicts(method) {
			value := measured.Value
			j.charge.Measured = &value
			return nil
		}
		j.chargeNotNow(method, []charge.Obstacle{notNow.Obstacle(j.visit.Units)})
		return j.judgeBothSides()
	}
	if err != nil {
		return rangeProblem("equipment.label", err)
	}
	if why := j.unsettled(); why != "" {
		value := measured.Value
		j.charge.Outcome, j.charge.Measured, j.charge.Reasons = ChargeNotNow, &value, []string{why}
		j.charge.Instead = []string{"wait until it has settled, then judge the charge; move nothing until then"}
		return nil
	}
	for _, o := range obstacles {
		j.charge.Reasons = append(j.charge.Reasons, o.Reason)
	}
	verdict, err := charge.Judge(measured, target)
	if err != nil {
		return rangeProblem("readings."+methodFields[method][0], err)
	}
	if sub, ok := j.subcoolingBeside(method); ok {
		if verdict, err = charge.JudgeTogether(measured, sub, &target); err != nil {
			return rangeProblem("readings.liquidPressure", err)
		}
	}
	j.takeVerdict(verdict)
	return nil
}

// chargeNotNow says why the charge cannot be judged, and what to do instead.
func (j *job) chargeNotNow(method charge.Method, obstacles []charge.Obstacle) {
	j.charge.Outcome, j.charge.Method = ChargeNotNow, method.String()
	for _, o := range obstacles {
		if o.Forbids {
			j.charge.Reasons = append(j.charge.Reasons, o.Reason)
			j.charge.Instead = append(j.charge.Instead, o.Instead)
		}
		if o.Code == "heating" {
			break // the other conditions are those of cooling
		}
	}
	if len(j.wanting(method)) == 0 {
		if m, err := j.measure(method); err == nil {
			value := m.Value
			j.charge.Measured = &value
		}
	}
}

// judgeBothSides still calls a fixed restrictor overcharged where there is no
// target, if no superheat stands beside stacked liquid; a situation that
// forbids more than the target forbids this as well.
func (j *job) judgeBothSides() error {
	if j.visit.Equipment.Metering != FixedRestrictor || j.situationSpoiled() {
		return nil
	}
	if r := j.readings; r.SuctionPressure == nil || r.SuctionLine == nil {
		return nil
	}
	sub, ok := j.subcoolingBeside(charge.Superheat)
	if !ok {
		return nil
	}
	measured, err := j.measure(charge.Superheat)
	if err != nil {
		return rangeProblem("readings.suctionPressure", err)
	}
	verdict, err := charge.JudgeTogether(measured, sub, nil)
	if err != nil {
		return rangeProblem("readings.liquidPressure", err)
	}
	if verdict.Outcome == charge.Overcharged {
		j.charge.Instead = nil
		j.takeVerdict(verdict)
	}
	return nil
}

func (j *job) takeVerdict(v charge.Verdict) {
	value, deviation := v.Measured.Value, v.Deviation
	j.charge.Outcome, j.charge.Measured = chargeOutcomes[v.Outcome], &value
	if v.Target.Method != 0 {
		j.chargeTarget = v.Target
		target := v.Target.Value
		j.charge.Target, j.charge.TargetSource = &target, v.Target.Source.String()
		j.charge.Tolerance, j.charge.ToleranceSource = v.Target.Tolerance, v.Target.ToleranceSource.String()
		j.charge.Deviation = &deviation
	}
	j.charge.Low, j.charge.InBand, j.charge.High = v.Low, v.InBand, v.High
	j.charge.Reasons = append(j.charge.Reasons, v.Reasons(j.visit.Units)...)
	j.liquidStacked = v.StackedLiquid.Value != 0
	if better, ok := v.Better(); ok {
		j.charge.Instead = append(j.charge.Instead, better.Text(j.visit.Units))
	}
	j.contradicts(v.Method)
}

// contradicts takes the verdict back where the readings that the method rests
// on cannot be believed, and says which.
func (j *job) contradicts(m charge.Method) bool {
	var why []string
	for _, d := range j.doubts {
		if grave(d) && slices.ContainsFunc(d.Fields, func(f string) bool { return slices.Contains(methodFields[m], f) }) {
			why = append(why, d.Text)
		}
	}
	if len(why) == 0 {
		return false
	}
	j.readingsContradict = true
	j.charge.Outcome = ChargeCannotTell
	j.charge.Low, j.charge.InBand, j.charge.High = 1./3, 1./3, 1./3
	j.charge.Reasons = append(why, "the charge is judged by these readings, and they cannot be believed as they stand")
	j.charge.Instead = []string{"settle the doubts about the readings, then judge the charge"}
	return true
}

// grave doubts hold back what rests on the readings.
func grave(d Doubt) bool { return d.Belief == Doubted || d.Belief == Impossible }

var chargeOutcomes = map[charge.Outcome]ChargeOutcome{
	charge.InBand:       ChargeInBand,
	charge.Undercharged: ChargeLow,
	charge.Overcharged:  ChargeHigh,
	charge.CannotTell:   ChargeCannotTell,
}

// methodFields are the readings each method compares with its target.
var methodFields = map[charge.Method][]string{
	charge.Superheat:  {"suctionPressure", "suctionLine", "returnWetBulb", "outdoorDryBulb"},
	charge.Subcooling: {"liquidPressure", "liquidLine"},
	charge.Approach:   {"liquidLine", "outdoorDryBulb"},
}

// wanting names the readings that a method needs and the visit does not have.
func (j *job) wanting(m charge.Method) []string {
	var out []string
	for _, name := range methodFields[m] {
		if j.visit.Equipment.Label.Superheat != nil && m == charge.Superheat && (name == "returnWetBulb" || name == "outdoorDryBulb") {
			continue
		}
		if name == "liquidPressure" && j.readings.DischargePressure != nil {
			continue
		}
		if f := fieldNamed(name); !f.has(&j.readings) {
			out = append(out, name)
		}
	}
	return out
}

// measure needs the readings of the method to be there.
func (j *job) measure(m charge.Method) (charge.Measurement, error) {
	r, atm := &j.readings, j.atmosphere.Pressure
	switch m {
	case charge.Superheat:
		return charge.MeasureSuperheat(j.fluid, *r.SuctionPressure, atm, *r.SuctionLine)
	case charge.Subcooling:
		high, _ := j.highSide()
		return charge.MeasureSubcooling(j.fluid, *high, atm, *r.LiquidLine)
	}
	return charge.MeasureApproach(*r.LiquidLine, *r.OutdoorDryBulb)
}

// subcoolingBeside is the subcooling of a machine that is judged by superheat.
func (j *job) subcoolingBeside(m charge.Method) (charge.Measurement, bool) {
	if m != charge.Superheat || j.derived.Subcooling == nil {
		return charge.Measurement{}, false
	}
	sub, err := j.measure(charge.Subcooling)
	return sub, err == nil
}

// target is that of the label where it has one, with the label's tolerance.
func (j *job) target(m charge.Method) (charge.Target, error) {
	t, err := j.targetOf(m)
	if tolerance := j.visit.Equipment.Label.Tolerance; err == nil && tolerance != 0 && !t.General() {
		return t.WithTolerance(tolerance, t.Source)
	}
	return t, err
}

func (j *job) targetOf(m charge.Method) (charge.Target, error) {
	label := j.visit.Equipment.Label
	switch {
	case m == charge.Superheat && label.Superheat != nil:
		return charge.SuperheatTarget(label.Superheat, temperatureReading{}, temperatureReading{})
	case m == charge.Superheat:
		return charge.SuperheatTarget(nil, *j.readings.ReturnWetBulb, *j.readings.OutdoorDryBulb)
	case m == charge.Subcooling:
		return charge.SubcoolingTarget(label.Subcooling)
	}
	return charge.ApproachTarget(label.Approach)
}

func (j *job) situation() charge.Situation {
	v, r, c := &j.visit, &j.readings, &j.visit.Conditions
	s := charge.Situation{
		Units:              v.Units,
		Metering:           devices[v.Equipment.Metering],
		Fluid:              j.fluid,
		LabelSuperheat:     v.Equipment.Label.Superheat != nil,
		LabelSubcooling:    v.Equipment.Label.Subcooling != nil,
		LabelApproach:      v.Equipment.Label.Approach != nil,
		OutdoorDryBulb:     r.OutdoorDryBulb,
		ReturnDryBulb:      j.undoubted("returnDryBulb", r.ReturnDryBulb),
		ReturnWetBulb:      j.undoubted("returnWetBulb", r.ReturnWetBulb),
		Superheat:          j.derived.Superheat,
		Subcooling:         j.derived.Subcooling,
		Airflow:            r.Airflow,
		NominalCapacity:    v.Equipment.NominalCapacity,
		Running:            c.Running,
		Heating:            c.Heating,
		CoilWet:            c.CoilWet,
		PanelsOff:          c.PanelsOff,
		DoorsOpen:          c.DoorsOpen,
		EconomizerOpen:     c.EconomizerOpen,
		CoilIced:           c.CoilIced,
		FilterDirty:        c.FilterDirty,
		OutdoorCoilDirty:   c.OutdoorCoilDirty,
		SealedSystemOpened: c.SealedSystemOpened,

		CondenserFanCycling: c.CondenserFanCycling,
	}
	if n := len(v.Moves); n > 0 && len(v.Log) > 0 {
		s.SinceMove = v.Log[len(v.Log)-1].At - v.Moves[n-1].At
	}
	return s
}

// undoubted is the reading, or nil where it cannot be believed: no method is
// ruled out by such a one.
func (j *job) undoubted(field string, r *temperatureReading) *temperatureReading {
	if worst := gravest(j.doubts, field); worst == Doubted || worst == Impossible {
		return nil
	}
	return r
}

// situationSpoiled says that nothing measured now tells about the charge.
func (j *job) situationSpoiled() bool {
	c := &j.visit.Conditions
	return c.Heating || c.CoilWet || c.PanelsOff || c.CoilIced || c.SealedSystemOpened || j.unsuitableFluid()
}

// unsuitableFluid says that the refrigerant is none of comfort cooling.
func (j *job) unsuitableFluid() bool {
	var why *refrigerant.UnsuitableError
	return errors.As(j.fluid.ComfortCooling(), &why)
}

var devices = map[Metering]charge.Metering{
	FixedRestrictor: charge.FixedRestrictor,
	TXV:             charge.TXV,
	EXV:             charge.EXV,
}

// labelled lists readings, given by their JSON name, as the trade names them.
func labelled(fields []string) string {
	labels := make([]string, len(fields))
	for i, name := range fields {
		labels[i] = fieldNamed(name).label
	}
	return listed(labels)
}

func listed(items []string) string {
	switch len(items) {
	case 0:
		return ""
	case 1:
		return items[0]
	}
	out := items[0]
	for _, s := range items[1 : len(items)-1] {
		out += ", " + s
	}
	return out + " and " + items[len(items)-1]
}
