// What can be entered: each field with its label and kind. The library says what
// units a kind has.

const READINGS = [
  ["Gauges", [["suctionPressure", "Suction pressure", "gauge"], ["liquidPressure", "Liquid line pressure", "gauge"]]],
  ["Clamps", [["suctionLine", "Suction line", "temperature"], ["liquidLine", "Liquid line", "temperature"], ["dischargeLine", "Discharge line", "temperature"]]],
  ["Air", [["outdoorDryBulb", "Outdoor dry bulb", "temperature"], ["returnDryBulb", "Return dry bulb", "temperature"], ["returnWetBulb", "Return wet bulb", "temperature"], ["supplyDryBulb", "Supply dry bulb", "temperature"], ["supplyWetBulb", "Supply wet bulb", "temperature"]]],
];
const MORE = [["dischargePressure", "Discharge pressure", "gauge"], ["condenserLeaving", "Air leaving the condenser", "temperature"], ["airflow", "Indoor airflow", "flow"], ["externalStatic", "External static pressure", "static"], ["power", "Electric power", "power"], ["compressorCurrent", "Compressor current", "current"]];
const LABEL = [["equipment.label.subcooling", "Label subcooling", "difference"], ["equipment.label.superheat", "Label superheat, today", "difference"], ["equipment.label.charge", "Label charge", "charge"], ["equipment.nominalCapacity", "Nominal capacity", "capacity"], ["equipment.label.ratedAirflow", "Rated airflow", "flow"]];
const CONDITIONS = [["coilWet", "Outdoor coil wet"], ["panelsOff", "Panels off"], ["coilIced", "Ice on coil or line"], ["filterDirty", "Filter dirty"], ["outdoorCoilDirty", "Outdoor coil dirty"], ["doorsOpen", "Doors open"], ["economizerOpen", "Outdoor air drawn in"], ["condenserFanCycling", "Fan cycling"], ["oilStains", "Oil stains"], ["sealedSystemOpened", "Circuit was open"]];
// The refrigerant moved is logged, and is no part of the visit before that.
const MOVE = "move";
