package mix

import "testing"

// TestDrives: bales ride compressed, and the text says which limit asks for
// how many drives. The figures are arithmetic: 20 bales of 3.8 cu ft are
// 76 cu ft and, at 58 lb, 1160 lb; 10 cu yd of sand at 2400 to 3120 lb/cu yd
// are 24000 to 31200 lb.
func TestDrives(t *testing.T) {
	peat := `"tasks": [{"kind": "cover", "area": "560 sq ft", "layer": "3 in", "material": "peat"}],
		"offers": [{"material": "peat", "pack": "3.8 cu ft", "opens_to": "7 cu ft", "weight": "58 lb"}]`
	sand := `"tasks": [{"kind": "cover", "area": "1080 sq ft", "layer": "3 in", "material": "sand"}],
		"offers": [{"material": "sand", "bulk": "1/2 cu yd"}]`
	for _, tt := range []struct {
		why, job, haul, want string
	}{
		{"compressed, they fit", peat, `{"room": "80 cu ft"}`, "at least 1 drive by room"},
		{"and 75 cu ft is short of them", peat, `{"room": "75 cu ft"}`, "at least 2 drives by room"},
		{"by the label's weight", peat, `{"payload": "600 lb", "room": "80 cu ft"}`, "at least 2 drives by payload"},
		{"dry and wet", sand, `{"payload": "3000 lb"}`, "at least 8 drives by payload, 11 by payload if it is wet"},
		{"room first, payload if wet", sand, `{"payload": "3000 lb", "room": "1 cu yd"}`, "at least 10 drives by room, 11 by payload if it is wet"},
		{"room whatever the weight", sand, `{"payload": "3000 lb", "room": "1/2 cu yd"}`, "at least 20 drives by room"},
		{"nothing is said", sand, `{}`, ""},
	} {
		p, err := PlanDocument([]byte(`{"schema": 1, "haul": ` + tt.haul + `, ` + tt.job + `}`))
		if err != nil {
			t.Fatalf("%s: %v", tt.why, err)
		}
		if got := p.Load.DrivesText(); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.why, got, tt.want)
		}
	}
}
