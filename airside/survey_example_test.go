package airside_test

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity"
)

// Four pressures and an airflow around a furnace: which part is it?
func ExampleJudgeSurvey() {
	static := func(inches float64) *quantity.Uncertain[quantity.StaticPressure] {
		return new(quantity.InchesWater(inches).PlusMinus(quantity.InchesWater(0.01)))
	}
	got, err := airside.JudgeSurvey(airside.Survey{
		Return: static(-0.45), Supply: static(0.30), MaxExternal: quantity.InchesWater(0.5),
		FilterDrop: static(0.10), CoilDrop: static(0.20),
		Airflow:  new(quantity.CFM(900).PlusMinus(quantity.CFM(40))),
		Capacity: quantity.Tons(3),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(satline.Say(got.Finding, satline.English, quantity.IP))
	for _, s := range got.Plan {
		fmt.Println(satline.Say(s, satline.English, quantity.IP))
	}
	// Output:
	// External static 0.75 in. w.c. of 0.50 in. w.c.: too high, 60 % of it on the return side.
	// More return: open grilles, widen or add a duct.
	// Read static, airflow and temperatures again.
}
