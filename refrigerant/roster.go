package refrigerant

// roster is every refrigerant of this package in the order of Standard 34's
// numbers. The mass fractions are the nominal formulations of ANSI/ASHRAE
// Standard 34, table 4-2; the standard also gives a tolerance for each, about
// one percentage point, so that a cylinder from the shelf is not exactly this.
//
// The table is static data: a program pays for no entry that it does not use.
var roster = [...]Refrigerant{
	{designation: "R-11", group: A1, parts: []Component{{"R-11", 1}}},
	{designation: "R-12", group: A1, parts: []Component{{"R-12", 1}}},
	{designation: "R-13I1", group: A1, parts: []Component{{"R-13I1", 1}}},
	{designation: "R-22", group: A1, parts: []Component{{"R-22", 1}}},
	{designation: "R-23", group: A1, parts: []Component{{"R-23", 1}}},
	{designation: "R-32", group: A2L, parts: []Component{{"R-32", 1}}},
	{designation: "R-113", group: A1, parts: []Component{{"R-113", 1}}},
	{designation: "R-114", group: A1, parts: []Component{{"R-114", 1}}},
	{designation: "R-115", group: A1, parts: []Component{{"R-115", 1}}},
	{designation: "R-116", group: A1, parts: []Component{{"R-116", 1}}},
	{designation: "R-123", group: B1, parts: []Component{{"R-123", 1}}},
	{designation: "R-124", group: A1, parts: []Component{{"R-124", 1}}},
	{designation: "R-125", group: A1, parts: []Component{{"R-125", 1}}},
	{designation: "R-134a", group: A1, parts: []Component{{"R-134a", 1}}},
	{designation: "R-141b", group: Unclassified, parts: []Component{{"R-141b", 1}}},
	{designation: "R-142b", group: A2, parts: []Component{{"R-142b", 1}}},
	{designation: "R-143a", group: A2L, parts: []Component{{"R-143a", 1}}},
	{designation: "R-152a", group: A2, parts: []Component{{"R-152a", 1}}},
	{designation: "R-161", group: Unclassified, parts: []Component{{"R-161", 1}}},
	{designation: "R-170", group: A3, parts: []Component{{"R-170", 1}}},
	{designation: "R-218", group: A1, parts: []Component{{"R-218", 1}}},
	{designation: "R-227ea", group: A1, parts: []Component{{"R-227ea", 1}}},
	{designation: "R-236fa", group: A1, parts: []Component{{"R-236fa", 1}}},
	{designation: "R-245fa", group: B1, parts: []Component{{"R-245fa", 1}}},
	{designation: "R-290", group: A3, parts: []Component{{"R-290", 1}}},
	{designation: "R-400(50/50)", group: A1, parts: []Component{{"R-12", 0.5}, {"R-114", 0.5}}},
	{designation: "R-400(60/40)", group: A1, parts: []Component{{"R-12", 0.6}, {"R-114", 0.4}}},
	{designation: "R-401A", group: A1, parts: []Component{
		{"R-22", 0.53}, {"R-152a", 0.13}, {"R-124", 0.34}}},
	{designation: "R-401B", group: A1, parts: []Component{
		{"R-22", 0.61}, {"R-152a", 0.11}, {"R-124", 0.28}}},
	{designation: "R-401C", group: A1, parts: []Component{
		{"R-22", 0.33}, {"R-152a", 0.15}, {"R-124", 0.52}}},
	{designation: "R-402A", group: A1, parts: []Component{
		{"R-125", 0.6}, {"R-290", 0.02}, {"R-22", 0.38}}},
	{designation: "R-402B", group: A1, parts: []Component{
		{"R-125", 0.38}, {"R-290", 0.02}, {"R-22", 0.6}}},
	{designation: "R-403A", group: A2, parts: []Component{
		{"R-290", 0.05}, {"R-22", 0.75}, {"R-218", 0.2}}},
	{designation: "R-403B", group: A1, parts: []Component{
		{"R-290", 0.05}, {"R-22", 0.56}, {"R-218", 0.39}}},
	{designation: "R-404A", group: A1, parts: []Component{
		{"R-125", 0.44}, {"R-143a", 0.52}, {"R-134a", 0.04}}},
	{designation: "R-406A", group: A2, parts: []Component{
		{"R-22", 0.55}, {"R-600a", 0.04}, {"R-142b", 0.41}}},
	{designation: "R-407A", group: A1, parts: []Component{
		{"R-32", 0.2}, {"R-125", 0.4}, {"R-134a", 0.4}}},
	{designation: "R-407B", group: A1, parts: []Component{
		{"R-32", 0.1}, {"R-125", 0.7}, {"R-134a", 0.2}}},
	{designation: "R-407C", group: A1, parts: []Component{
		{"R-32", 0.23}, {"R-125", 0.25}, {"R-134a", 0.52}}},
	{designation: "R-407D", group: A1, parts: []Component{
		{"R-32", 0.15}, {"R-125", 0.15}, {"R-134a", 0.7}}},
	{designation: "R-407E", group: A1, parts: []Component{
		{"R-32", 0.25}, {"R-125", 0.15}, {"R-134a", 0.6}}},
	{designation: "R-407F", group: A1, parts: []Component{
		{"R-32", 0.3}, {"R-125", 0.3}, {"R-134a", 0.4}}},
	{designation: "R-407G", group: A1, parts: []Component{
		{"R-32", 0.025}, {"R-125", 0.025}, {"R-134a", 0.95}}},
	{designation: "R-407H", group: A1, parts: []Component{
		{"R-32", 0.325}, {"R-125", 0.15}, {"R-134a", 0.525}}},
	{designation: "R-407I", group: A1, parts: []Component{
		{"R-32", 0.195}, {"R-125", 0.085}, {"R-134a", 0.72}}},
	{designation: "R-408A", group: A1, parts: []Component{
		{"R-125", 0.07}, {"R-143a", 0.46}, {"R-22", 0.47}}},
	{designation: "R-409A", group: A1, parts: []Component{
		{"R-22", 0.6}, {"R-124", 0.25}, {"R-142b", 0.15}}},
	{designation: "R-409B", group: A1, parts: []Component{
		{"R-22", 0.65}, {"R-124", 0.25}, {"R-142b", 0.1}}},
	{designation: "R-410A", group: A1, parts: []Component{{"R-32", 0.5}, {"R-125", 0.5}}},
	{designation: "R-410B", group: A1, parts: []Component{{"R-32", 0.45}, {"R-125", 0.55}}},
	{designation: "R-411A", group: A2, parts: []Component{
		{"R-1270", 0.015}, {"R-22", 0.875}, {"R-152a", 0.11}}},
	{designation: "R-411B", group: A2, parts: []Component{
		{"R-1270", 0.03}, {"R-22", 0.94}, {"R-152a", 0.03}}},
	{designation: "R-413A", group: A2, parts: []Component{
		{"R-218", 0.09}, {"R-134a", 0.88}, {"R-600a", 0.03}}},
	{designation: "R-414A", group: A1, parts: []Component{
		{"R-22", 0.51}, {"R-124", 0.285}, {"R-600a", 0.04}, {"R-142b", 0.165}}},
	{designation: "R-414B", group: A1, parts: []Component{
		{"R-22", 0.5}, {"R-124", 0.39}, {"R-600a", 0.015}, {"R-142b", 0.095}}},
	{designation: "R-415A", group: A2, parts: []Component{{"R-22", 0.82}, {"R-152a", 0.18}}},
	{designation: "R-415B", group: A2, parts: []Component{{"R-22", 0.25}, {"R-152a", 0.75}}},
	{designation: "R-416A", group: A1, parts: []Component{
		{"R-134a", 0.59}, {"R-124", 0.395}, {"R-600", 0.015}}},
	{designation: "R-417A", group: A1, parts: []Component{
		{"R-125", 0.466}, {"R-134a", 0.5}, {"R-600", 0.034}}},
	{designation: "R-417B", group: A1, parts: []Component{
		{"R-125", 0.79}, {"R-134a", 0.183}, {"R-600", 0.027}}},
	{designation: "R-417C", group: A1, parts: []Component{
		{"R-125", 0.195}, {"R-134a", 0.788}, {"R-600", 0.017}}},
	{designation: "R-418A", group: A2, parts: []Component{
		{"R-290", 0.015}, {"R-22", 0.96}, {"R-152a", 0.025}}},
	{designation: "R-419A", group: A2, parts: []Component{
		{"R-125", 0.77}, {"R-134a", 0.19}, {"R-E170", 0.04}}},
	{designation: "R-419B", group: A2, parts: []Component{
		{"R-125", 0.485}, {"R-134a", 0.48}, {"R-E170", 0.035}}},
	{designation: "R-420A", group: A1, parts: []Component{{"R-134a", 0.88}, {"R-142b", 0.12}}},
	{designation: "R-421A", group: A1, parts: []Component{{"R-125", 0.58}, {"R-134a", 0.42}}},
	{designation: "R-421B", group: A1, parts: []Component{{"R-125", 0.85}, {"R-134a", 0.15}}},
	{designation: "R-422A", group: A1, parts: []Component{
		{"R-125", 0.851}, {"R-134a", 0.115}, {"R-600a", 0.034}}},
	{designation: "R-422B", group: A1, parts: []Component{
		{"R-125", 0.55}, {"R-134a", 0.42}, {"R-600a", 0.03}}},
	{designation: "R-422C", group: A1, parts: []Component{
		{"R-125", 0.82}, {"R-134a", 0.15}, {"R-600a", 0.03}}},
	{designation: "R-422D", group: A1, parts: []Component{
		{"R-125", 0.651}, {"R-134a", 0.315}, {"R-600a", 0.034}}},
	{designation: "R-422E", group: A1, parts: []Component{
		{"R-125", 0.58}, {"R-134a", 0.393}, {"R-600a", 0.027}}},
	{designation: "R-423A", group: A1, parts: []Component{{"R-134a", 0.525}, {"R-227ea", 0.475}}},
	{designation: "R-424A", group: A1, parts: []Component{
		{"R-125", 0.505}, {"R-134a", 0.47}, {"R-600a", 0.009}, {"R-600", 0.01}, {"R-601a", 0.006}}},
	{designation: "R-425A", group: A1, parts: []Component{
		{"R-32", 0.185}, {"R-134a", 0.695}, {"R-227ea", 0.12}}},
	{designation: "R-426A", group: A1, parts: []Component{
		{"R-125", 0.051}, {"R-134a", 0.93}, {"R-600", 0.013}, {"R-601a", 0.006}}},
	{designation: "R-427A", group: A1, parts: []Component{
		{"R-32", 0.15}, {"R-125", 0.25}, {"R-143a", 0.1}, {"R-134a", 0.5}}},
	{designation: "R-427C", group: A1, parts: []Component{
		{"R-32", 0.25}, {"R-125", 0.25}, {"R-143a", 0.1}, {"R-134a", 0.4}}},
	{designation: "R-428A", group: A1, parts: []Component{
		{"R-125", 0.775}, {"R-143a", 0.2}, {"R-290", 0.006}, {"R-600a", 0.019}}},
	{designation: "R-429A", group: A3, parts: []Component{
		{"R-E170", 0.6}, {"R-152a", 0.1}, {"R-600a", 0.3}}},
	{designation: "R-430A", group: A3, parts: []Component{{"R-152a", 0.76}, {"R-600a", 0.24}}},
	{designation: "R-431A", group: A3, parts: []Component{{"R-290", 0.71}, {"R-152a", 0.29}}},
	{designation: "R-432A", group: A3, parts: []Component{{"R-1270", 0.8}, {"R-E170", 0.2}}},
	{designation: "R-433A", group: A3, parts: []Component{{"R-1270", 0.3}, {"R-290", 0.7}}},
	{designation: "R-433B", group: A3, parts: []Component{{"R-1270", 0.05}, {"R-290", 0.95}}},
	{designation: "R-433C", group: A3, parts: []Component{{"R-1270", 0.25}, {"R-290", 0.75}}},
	{designation: "R-434A", group: A1, parts: []Component{
		{"R-125", 0.632}, {"R-143a", 0.18}, {"R-134a", 0.16}, {"R-600a", 0.028}}},
	{designation: "R-435A", group: A3, parts: []Component{{"R-E170", 0.8}, {"R-152a", 0.2}}},
	{designation: "R-436A", group: A3, parts: []Component{{"R-290", 0.56}, {"R-600a", 0.44}}},
	{designation: "R-436B", group: A3, parts: []Component{{"R-290", 0.52}, {"R-600a", 0.48}}},
	{designation: "R-436C", group: A3, parts: []Component{{"R-290", 0.95}, {"R-600a", 0.05}}},
	{designation: "R-437A", group: A1, parts: []Component{
		{"R-125", 0.195}, {"R-134a", 0.785}, {"R-600", 0.014}, {"R-601", 0.006}}},
	{designation: "R-438A", group: A1, parts: []Component{
		{"R-32", 0.085}, {"R-125", 0.45}, {"R-134a", 0.442}, {"R-600", 0.017}, {"R-601a", 0.006}}},
	{designation: "R-439A", group: A2, parts: []Component{
		{"R-32", 0.5}, {"R-125", 0.47}, {"R-600a", 0.03}}},
	{designation: "R-440A", group: A2, parts: []Component{
		{"R-290", 0.006}, {"R-134a", 0.016}, {"R-152a", 0.978}}},
	{designation: "R-441A", group: A3, parts: []Component{
		{"R-170", 0.031}, {"R-290", 0.548}, {"R-600a", 0.06}, {"R-600", 0.361}}},
	{designation: "R-442A", group: A1, parts: []Component{
		{"R-32", 0.31}, {"R-125", 0.31}, {"R-134a", 0.3}, {"R-152a", 0.03}, {"R-227ea", 0.05}}},
	{designation: "R-443A", group: A3, parts: []Component{
		{"R-1270", 0.55}, {"R-290", 0.4}, {"R-600a", 0.05}}},
	{designation: "R-444A", group: A2L, parts: []Component{
		{"R-32", 0.12}, {"R-152a", 0.05}, {"R-1234ze(E)", 0.83}}},
	{designation: "R-444B", group: A2L, parts: []Component{
		{"R-32", 0.415}, {"R-152a", 0.1}, {"R-1234ze(E)", 0.485}}},
	{designation: "R-445A", group: A2L, parts: []Component{
		{"R-744", 0.06}, {"R-134a", 0.09}, {"R-1234ze(E)", 0.85}}},
	{designation: "R-446A", group: A2L, parts: []Component{
		{"R-32", 0.68}, {"R-1234ze(E)", 0.29}, {"R-600", 0.03}}},
	{designation: "R-447A", group: A2L, parts: []Component{
		{"R-32", 0.68}, {"R-125", 0.035}, {"R-1234ze(E)", 0.285}}},
	{designation: "R-447B", group: A2L, parts: []Component{
		{"R-32", 0.68}, {"R-125", 0.08}, {"R-1234ze(E)", 0.24}}},
	{designation: "R-448A", group: A1, parts: []Component{
		{"R-32", 0.26}, {"R-125", 0.26}, {"R-1234yf", 0.2}, {"R-134a", 0.21},
		{"R-1234ze(E)", 0.07}}},
	{designation: "R-448B", group: A1, parts: []Component{
		{"R-32", 0.21}, {"R-125", 0.21}, {"R-1234yf", 0.2}, {"R-134a", 0.31},
		{"R-1234ze(E)", 0.07}}},
	{designation: "R-449A", group: A1, parts: []Component{
		{"R-32", 0.243}, {"R-125", 0.247}, {"R-1234yf", 0.253}, {"R-134a", 0.257}}},
	{designation: "R-449B", group: A1, parts: []Component{
		{"R-32", 0.252}, {"R-125", 0.243}, {"R-1234yf", 0.232}, {"R-134a", 0.273}}},
	{designation: "R-449C", group: A1, parts: []Component{
		{"R-32", 0.2}, {"R-125", 0.2}, {"R-1234yf", 0.31}, {"R-134a", 0.29}}},
	{designation: "R-450A", group: A1, parts: []Component{{"R-134a", 0.42}, {"R-1234ze(E)", 0.58}}},
	{designation: "R-451A", group: A2L, parts: []Component{{"R-1234yf", 0.898}, {"R-134a", 0.102}}},
	{designation: "R-451B", group: A2L, parts: []Component{{"R-1234yf", 0.888}, {"R-134a", 0.112}}},
	{designation: "R-452A", group: A1, parts: []Component{
		{"R-32", 0.11}, {"R-125", 0.59}, {"R-1234yf", 0.3}}},
	{designation: "R-452B", group: A2L, parts: []Component{
		{"R-32", 0.67}, {"R-125", 0.07}, {"R-1234yf", 0.26}}},
	{designation: "R-452C", group: A1, parts: []Component{
		{"R-32", 0.125}, {"R-125", 0.61}, {"R-1234yf", 0.265}}},
	{designation: "R-453A", group: A1, parts: []Component{
		{"R-32", 0.2}, {"R-125", 0.2}, {"R-134a", 0.538}, {"R-227ea", 0.05},
		{"R-600", 0.006}, {"R-601a", 0.006}}},
	{designation: "R-454A", group: A2L, parts: []Component{{"R-32", 0.35}, {"R-1234yf", 0.65}}},
	{designation: "R-454B", group: A2L, parts: []Component{{"R-32", 0.689}, {"R-1234yf", 0.311}}},
	{designation: "R-454C", group: A2L, parts: []Component{{"R-32", 0.215}, {"R-1234yf", 0.785}}},
	{designation: "R-455A", group: A2L, parts: []Component{
		{"R-744", 0.03}, {"R-32", 0.215}, {"R-1234yf", 0.755}}},
	{designation: "R-456A", group: A1, parts: []Component{
		{"R-32", 0.06}, {"R-134a", 0.45}, {"R-1234ze(E)", 0.49}}},
	{designation: "R-457A", group: A2L, parts: []Component{
		{"R-32", 0.18}, {"R-1234yf", 0.7}, {"R-152a", 0.12}}},
	{designation: "R-457B", group: A2L, parts: []Component{
		{"R-32", 0.35}, {"R-1234yf", 0.55}, {"R-152a", 0.1}}},
	{designation: "R-457C", group: A2L, parts: []Component{
		{"R-32", 0.075}, {"R-1234yf", 0.78}, {"R-152a", 0.145}}},
	{designation: "R-458A", group: A1, parts: []Component{
		{"R-32", 0.205}, {"R-125", 0.04}, {"R-134a", 0.614}, {"R-227ea", 0.135},
		{"R-236fa", 0.006}}},
	{designation: "R-459A", group: A2L, parts: []Component{
		{"R-32", 0.68}, {"R-1234yf", 0.26}, {"R-1234ze(E)", 0.06}}},
	{designation: "R-459B", group: A2L, parts: []Component{
		{"R-32", 0.21}, {"R-1234yf", 0.69}, {"R-1234ze(E)", 0.1}}},
	{designation: "R-460A", group: A1, parts: []Component{
		{"R-32", 0.12}, {"R-125", 0.52}, {"R-134a", 0.14}, {"R-1234ze(E)", 0.22}}},
	{designation: "R-460B", group: A1, parts: []Component{
		{"R-32", 0.28}, {"R-125", 0.25}, {"R-134a", 0.2}, {"R-1234ze(E)", 0.27}}},
	{designation: "R-460C", group: A1, parts: []Component{
		{"R-32", 0.025}, {"R-125", 0.025}, {"R-134a", 0.46}, {"R-1234ze(E)", 0.49}}},
	{designation: "R-461A", group: A1, parts: []Component{
		{"R-125", 0.55}, {"R-143a", 0.05}, {"R-134a", 0.32}, {"R-227ea", 0.05}, {"R-600a", 0.03}}},
	{designation: "R-462A", group: A2, parts: []Component{
		{"R-32", 0.09}, {"R-125", 0.42}, {"R-143a", 0.02}, {"R-134a", 0.44}, {"R-600", 0.03}}},
	{designation: "R-463A", group: A1, parts: []Component{
		{"R-744", 0.06}, {"R-32", 0.36}, {"R-125", 0.3}, {"R-1234yf", 0.14}, {"R-134a", 0.14}}},
	{designation: "R-464A", group: A1, parts: []Component{
		{"R-32", 0.27}, {"R-125", 0.27}, {"R-1234ze(E)", 0.4}, {"R-227ea", 0.06}}},
	{designation: "R-465A", group: A2, parts: []Component{
		{"R-32", 0.21}, {"R-290", 0.079}, {"R-1234yf", 0.711}}},
	{designation: "R-466A", group: A1, parts: []Component{
		{"R-32", 0.49}, {"R-125", 0.115}, {"R-13I1", 0.395}}},
	{designation: "R-467A", group: A2L, parts: []Component{
		{"R-32", 0.22}, {"R-125", 0.05}, {"R-134a", 0.724}, {"R-600a", 0.006}}},
	{designation: "R-468A", group: A2L, parts: []Component{
		{"R-1132a", 0.035}, {"R-32", 0.215}, {"R-1234yf", 0.75}}},
	{designation: "R-468B", group: A2L, parts: []Component{
		{"R-1132a", 0.06}, {"R-32", 0.13}, {"R-1234yf", 0.81}}},
	{designation: "R-468C", group: A2L, parts: []Component{
		{"R-1132a", 0.06}, {"R-32", 0.42}, {"R-1234yf", 0.52}}},
	{designation: "R-469A", group: A1, parts: []Component{
		{"R-744", 0.35}, {"R-32", 0.325}, {"R-125", 0.325}}},
	{designation: "R-470A", group: A1, parts: []Component{
		{"R-744", 0.1}, {"R-32", 0.17}, {"R-125", 0.19}, {"R-134a", 0.07},
		{"R-1234ze(E)", 0.44}, {"R-227ea", 0.03}}},
	{designation: "R-470B", group: A1, parts: []Component{
		{"R-744", 0.1}, {"R-32", 0.115}, {"R-125", 0.115}, {"R-134a", 0.03},
		{"R-1234ze(E)", 0.57}, {"R-227ea", 0.07}}},
	{designation: "R-471A", group: A1, parts: []Component{
		{"R-1234ze(E)", 0.787}, {"R-227ea", 0.043}, {"R-1336mzz(E)", 0.17}}},
	{designation: "R-472A", group: A1, parts: []Component{
		{"R-744", 0.69}, {"R-32", 0.12}, {"R-134a", 0.19}}},
	{designation: "R-472B", group: A1, parts: []Component{
		{"R-744", 0.58}, {"R-32", 0.1}, {"R-134a", 0.32}}},
	{designation: "R-473A", group: A1, parts: []Component{
		{"R-1132a", 0.2}, {"R-23", 0.1}, {"R-744", 0.6}, {"R-125", 0.1}}},
	{designation: "R-474A", group: A2L, parts: []Component{
		{"R-1132(E)", 0.23}, {"R-1234yf", 0.77}}},
	{designation: "R-475A", group: A1, parts: []Component{
		{"R-1234yf", 0.45}, {"R-134a", 0.43}, {"R-1234ze(E)", 0.12}}},
	{designation: "R-476A", group: A1, parts: []Component{
		{"R-134a", 0.1}, {"R-1234ze(E)", 0.78}, {"R-1336mzz(E)", 0.12}}},
	{designation: "R-500", group: A1, parts: []Component{{"R-12", 0.738}, {"R-152a", 0.262}}},
	{designation: "R-502", group: A1, parts: []Component{{"R-22", 0.488}, {"R-115", 0.512}}},
	{designation: "R-507A", group: A1, parts: []Component{{"R-125", 0.5}, {"R-143a", 0.5}}},
	{designation: "R-508A", group: A1, parts: []Component{{"R-23", 0.39}, {"R-116", 0.61}}},
	{designation: "R-508B", group: A1, parts: []Component{{"R-23", 0.46}, {"R-116", 0.54}}},
	{designation: "R-509A", group: A1, parts: []Component{{"R-22", 0.44}, {"R-218", 0.56}}},
	{designation: "R-510A", group: A3, parts: []Component{{"R-E170", 0.88}, {"R-600a", 0.12}}},
	{designation: "R-511A", group: A3, parts: []Component{{"R-290", 0.95}, {"R-E170", 0.05}}},
	{designation: "R-512A", group: A2, parts: []Component{{"R-134a", 0.05}, {"R-152a", 0.95}}},
	{designation: "R-513A", group: A1, parts: []Component{{"R-1234yf", 0.56}, {"R-134a", 0.44}}},
	{designation: "R-513B", group: A1, parts: []Component{{"R-1234yf", 0.585}, {"R-134a", 0.415}}},
	{designation: "R-515A", group: A1, parts: []Component{
		{"R-1234ze(E)", 0.88}, {"R-227ea", 0.12}}},
	{designation: "R-515B", group: A1, parts: []Component{
		{"R-1234ze(E)", 0.911}, {"R-227ea", 0.089}}},
	{designation: "R-516A", group: A2L, parts: []Component{
		{"R-1234yf", 0.775}, {"R-134a", 0.085}, {"R-152a", 0.14}}},
	{designation: "R-600", group: A3, parts: []Component{{"R-600", 1}}},
	{designation: "R-600a", group: A3, parts: []Component{{"R-600a", 1}}},
	{designation: "R-601", group: A3, parts: []Component{{"R-601", 1}}},
	{designation: "R-601a", group: A3, parts: []Component{{"R-601a", 1}}},
	{designation: "R-717", group: B2L, parts: []Component{{"R-717", 1}}},
	{designation: "R-718", group: A1, parts: []Component{{"R-718", 1}}},
	{designation: "R-744", group: A1, parts: []Component{{"R-744", 1}}},
	{designation: "R-1132(E)", group: B2, parts: []Component{{"R-1132(E)", 1}}},
	{designation: "R-1132a", group: A2, parts: []Component{{"R-1132a", 1}}},
	{designation: "R-1224yd(Z)", group: A1, parts: []Component{{"R-1224yd(Z)", 1}}},
	{designation: "R-1233zd(E)", group: A1, parts: []Component{{"R-1233zd(E)", 1}}},
	{designation: "R-1234yf", group: A2L, parts: []Component{{"R-1234yf", 1}}},
	{designation: "R-1234ze(E)", group: A2L, parts: []Component{{"R-1234ze(E)", 1}}},
	{designation: "R-1270", group: A3, parts: []Component{{"R-1270", 1}}},
	{designation: "R-1336mzz(E)", group: A1, parts: []Component{{"R-1336mzz(E)", 1}}},
	{designation: "R-1336mzz(Z)", group: A1, parts: []Component{{"R-1336mzz(Z)", 1}}},
	{designation: "R-E170", group: A3, parts: []Component{{"R-E170", 1}}},
}
