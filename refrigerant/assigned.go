package refrigerant

import (
	"strconv"
	"strings"
)

// assignedElsewhere are designations of ANSI/ASHRAE Standard 34, tables 4-1 and 4-2 with
// addenda, from memory, that the roster does not carry: no equation of state, or nobody
// meets them. They are listed so that none is taken for its neighbor in spelling.
const assignedElsewhere = `
R-10 R-12B1 R-12B2 R-13 R-13B1 R-14 R-20 R-21 R-22B1 R-30 R-31 R-40 R-41 R-50
R-110 R-111 R-112 R-112a R-113a R-114a R-114B2 R-120 R-122 R-123a R-124a R-131 R-132b R-133a R-134
R-140a R-141 R-142 R-143 R-150 R-150a R-151a R-152 R-160
R-211 R-212 R-213 R-214 R-215 R-216 R-216ca R-217 R-217ba R-227ca R-236cb R-236ea R-244bb
R-245ca R-245cb R-245ea R-245eb
R-254cb R-261ba R-280 R-C316 R-C317 R-C318 R-365mfc R-3-1-10 R-43-10mee
R-405A R-412A R-477A R-477B R-478A R-479A R-480A R-481A R-482A R-482B R-483A R-484A R-485A R-486A
R-501 R-503 R-504 R-505 R-506 R-514A R-517A R-518A
R-602 R-603 R-610 R-611 R-620 R-630 R-631
R-702 R-704 R-720 R-728 R-729 R-732 R-740 R-744A R-764
R-1112a R-1113 R-1114 R-1120 R-1122 R-1123 R-1130 R-1130(E) R-1140 R-1141 R-1150 R-1216 R-1218
R-1225ye(E) R-1225ye(Z) R-1225zc
R-1233xf R-1233zd(Z) R-1234ye(E) R-1234ze(Z) R-1243zf R-1354mzy(E) R-1438mzz(E)
R-E125 R-E134 R-E143a R-E170a R-E245cb1 R-E245fa2 R-E347mcc
`

// assigned returns the spelling of a designation that is, or by its number may be,
// assigned and not carried, and "" for any other key. Standard 34 numbers blends in the
// order in which they are submitted: one past the last that is carried is new, not
// misspelled.
func assigned(key string) string {
	for name := range strings.FieldsSeq(assignedElsewhere) {
		if sameKey(name, key) {
			return name
		}
	}
	digits := strings.TrimRight(key, "abcdefgh")
	n, err := strconv.Atoi(digits)
	if err != nil || len(key) > len(digits)+1 {
		return ""
	}
	for _, series := range [...][2]int{{476, 500}, {516, 600}} {
		if series[0] < n && n < series[1] {
			return "R-" + digits + strings.ToUpper(key[len(digits):])
		}
	}
	return ""
}
