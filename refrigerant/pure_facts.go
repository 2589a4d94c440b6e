package refrigerant

// A pureFact is what is known of a pure refrigerant besides its equation of state.
type pureFact struct {
	designation string
	name        string // chemical name
	formula     string
	molarMass   float64 // kg/mol, as in its equation of state
	group       SafetyGroup
	ar4, ar5    gwpFact
	control     Control
}

// pureFacts is in the order of Standard 34's numbers. safety.go, gwp.go and
// control.go say what the columns mean and where they come from.
var pureFacts = [...]pureFact{
	{"R-11", "trichlorofluoromethane", "CCl3F", 0.137368, A1, gwpFact{4750, listed}, gwpFact{4660, listed}, CFC},
	{"R-12", "dichlorodifluoromethane", "CCl2F2", 0.120913, A1, gwpFact{10900, listed}, gwpFact{10200, listed}, CFC},
	{"R-13I1", "trifluoroiodomethane", "CF3I", 0.1959104, A1, gwpFact{0.4, listed}, gwpFact{0.4, fromAR4}, NotControlled},
	{"R-22", "chlorodifluoromethane", "CHClF2", 0.086468, A1, gwpFact{1810, listed}, gwpFact{1760, listed}, HCFC},
	{"R-23", "trifluoromethane", "CHF3", 0.07001385, A1, gwpFact{14800, listed}, gwpFact{12400, listed}, HFC},
	{"R-32", "difluoromethane", "CH2F2", 0.052024, A2L, gwpFact{675, listed}, gwpFact{677, listed}, HFC},
	{"R-113", "1,1,2-trichloro-1,2,2-trifluoroethane", "CCl2FCClF2", 0.187375, A1, gwpFact{6130, listed}, gwpFact{5820, listed}, CFC},
	{"R-114", "1,2-dichloro-1,1,2,2-tetrafluoroethane", "CClF2CClF2", 0.170921, A1, gwpFact{10000, listed}, gwpFact{8590, listed}, CFC},
	{"R-115", "chloropentafluoroethane", "CClF2CF3", 0.154466416, A1, gwpFact{7370, listed}, gwpFact{7670, listed}, CFC},
	{"R-116", "hexafluoroethane", "CF3CF3", 0.13801182, A1, gwpFact{12200, listed}, gwpFact{11100, listed}, NotControlled},
	{"R-123", "2,2-dichloro-1,1,1-trifluoroethane", "CHCl2CF3", 0.152931, B1, gwpFact{77, listed}, gwpFact{79, listed}, HCFC},
	{"R-124", "2-chloro-1,1,1,2-tetrafluoroethane", "CHClFCF3", 0.1364762, A1, gwpFact{609, listed}, gwpFact{527, listed}, HCFC},
	{"R-125", "pentafluoroethane", "CHF2CF3", 0.1200214, A1, gwpFact{3500, listed}, gwpFact{3170, listed}, HFC},
	{"R-134a", "1,1,1,2-tetrafluoroethane", "CH2FCF3", 0.102032, A1, gwpFact{1430, listed}, gwpFact{1300, listed}, HFC},
	{"R-141b", "1,1-dichloro-1-fluoroethane", "CH3CCl2F", 0.11694962, Unclassified, gwpFact{725, listed}, gwpFact{782, listed}, HCFC},
	{"R-142b", "1-chloro-1,1-difluoroethane", "CH3CClF2", 0.10049503, A2, gwpFact{2310, listed}, gwpFact{1980, listed}, HCFC},
	{"R-143a", "1,1,1-trifluoroethane", "CH3CF3", 0.084041, A2L, gwpFact{4470, listed}, gwpFact{4800, listed}, HFC},
	{"R-152a", "1,1-difluoroethane", "CH3CHF2", 0.066051, A2, gwpFact{124, listed}, gwpFact{138, listed}, HFC},
	{"R-161", "fluoroethane", "CH3CH2F", 0.0480595, Unclassified, gwpFact{12, thirdReport}, gwpFact{4, listed}, NotControlled},
	{"R-170", "ethane", "CH3CH3", 0.03006904, A3, gwpFact{5.5, indirectAR4}, gwpFact{5.5, indirectAR4}, NotControlled},
	{"R-218", "octafluoropropane", "CF3CF2CF3", 0.18801933, A1, gwpFact{8830, listed}, gwpFact{8900, listed}, NotControlled},
	{"R-227ea", "1,1,1,2,3,3,3-heptafluoropropane", "CF3CHFCF3", 0.17002886, A1, gwpFact{3220, listed}, gwpFact{3350, listed}, HFC},
	{"R-236fa", "1,1,1,3,3,3-hexafluoropropane", "CF3CH2CF3", 0.1520384, A1, gwpFact{9810, listed}, gwpFact{8060, listed}, HFC},
	{"R-245fa", "1,1,1,3,3-pentafluoropropane", "CHF2CH2CF3", 0.13404794, B1, gwpFact{1030, listed}, gwpFact{858, listed}, HFC},
	{"R-290", "propane", "CH3CH2CH3", 0.04409562, A3, gwpFact{3.3, indirectAR4}, gwpFact{3.3, indirectAR4}, NotControlled},
	{"R-600", "butane", "CH3CH2CH2CH3", 0.0581222, A3, gwpFact{4, indirectAR4}, gwpFact{4, indirectAR4}, NotControlled},
	{"R-600a", "isobutane", "CH(CH3)3", 0.0581222, A3, gwpFact{4, likeButane}, gwpFact{4, likeButane}, NotControlled},
	{"R-601", "pentane", "CH3CH2CH2CH2CH3", 0.07214878, A3, gwpFact{5, fgasAnnexIV}, gwpFact{5, fgasAnnexIV}, NotControlled},
	{"R-601a", "isopentane", "(CH3)2CHCH2CH3", 0.07214878, A3, gwpFact{5, fgasAnnexIV}, gwpFact{5, fgasAnnexIV}, NotControlled},
	{"R-717", "ammonia", "NH3", 0.01703052, B2L, gwpFact{0, byConvention}, gwpFact{0, byConvention}, NotControlled},
	{"R-718", "water", "H2O", 0.018015268, A1, gwpFact{0, byConvention}, gwpFact{0, byConvention}, NotControlled},
	{"R-744", "carbon dioxide", "CO2", 0.0440098, A1, gwpFact{1, listed}, gwpFact{1, listed}, NotControlled},
	{"R-1132(E)", "trans-1,2-difluoroethene", "CHF=CHF", 0.064035, B2, gwpFact{1, shortLived}, gwpFact{1, shortLived}, NotControlled},
	{"R-1132a", "1,1-difluoroethene", "CF2=CH2", 0.0640340864, A2, gwpFact{1, shortLived}, gwpFact{1, belowOne}, NotControlled},
	{"R-1224yd(Z)", "cis-1-chloro-2,3,3,3-tetrafluoropropene", "CF3CF=CHCl", 0.1484867, A1, gwpFact{1, shortLived}, gwpFact{1, shortLived}, NotControlled},
	{"R-1233zd(E)", "trans-1-chloro-3,3,3-trifluoropropene", "CF3CH=CHCl", 0.1304962, A1, gwpFact{4.5, fgasAnnexII}, gwpFact{1, listed}, NotControlled},
	{"R-1234yf", "2,3,3,3-tetrafluoropropene", "CF3CF=CH2", 0.1140416, A2L, gwpFact{4, fgasAnnexII}, gwpFact{1, belowOne}, NotControlled},
	{"R-1234ze(E)", "trans-1,3,3,3-tetrafluoropropene", "CF3CH=CHF", 0.1140415928, A2L, gwpFact{7, fgasAnnexII}, gwpFact{1, belowOne}, NotControlled},
	{"R-1270", "propene", "CH3CH=CH2", 0.04207974, A3, gwpFact{1.8, indirectAR4}, gwpFact{1.8, indirectAR4}, NotControlled},
	{"R-1336mzz(E)", "trans-1,1,1,4,4,4-hexafluoro-2-butene", "CF3CH=CHCF3", 0.1640491, A1, gwpFact{18, sixthReport}, gwpFact{18, sixthReport}, NotControlled},
	{"R-1336mzz(Z)", "cis-1,1,1,4,4,4-hexafluoro-2-butene", "CF3CH=CHCF3", 0.164056, A1, gwpFact{9, fgasAnnexII}, gwpFact{2, listed}, NotControlled},
	{"R-E170", "dimethyl ether", "CH3OCH3", 0.04606844, A3, gwpFact{1, listed}, gwpFact{1, fromAR4}, NotControlled},
}
