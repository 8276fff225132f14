package units

import "testing"

// FuzzParse reads any text as every kind: nothing panics, everything that is
// accepted is within its limit, and its String reads back the same.
func FuzzParse(f *testing.F) {
	for _, tt := range volumes {
		f.Add(tt.in)
	}
	for _, tt := range lengths {
		f.Add(tt.in)
	}
	for _, tt := range refused {
		f.Add(tt.in)
	}
	if len(volumes)*len(lengths)*len(refused) == 0 {
		f.Fatal("no seeds")
	}
	f.Fuzz(func(t *testing.T, s string) {
		if v, err := ParseVolume(s); err == nil {
			if back, err := ParseVolume(v.String()); back != v || err != nil || v < 0 || v > MaxVolume {
				t.Errorf("ParseVolume(%q) = %d, which reads back as %d, %v", s, v, back, err)
			}
		} else if v != 0 {
			t.Errorf("ParseVolume(%q) = %d beside an error", s, v)
		}
		if l, err := ParseOffset(s); err == nil {
			if back, err := ParseOffset(l.String()); back != l || err != nil {
				t.Errorf("ParseOffset(%q) = %d, which reads back as %d, %v", s, l, back, err)
			}
		}
		if r, err := ParseRatio(s); err == nil {
			if back, err := ParseRatio(r.String()); back != r || err != nil {
				t.Errorf("ParseRatio(%q) = %v, which reads back as %v, %v", s, r, back, err)
			}
		}
		if m, err := ParseMoney(s); err == nil {
			if back, err := ParseMoney(m.String()); back != m || err != nil {
				t.Errorf("ParseMoney(%q) = %v, which reads back as %v, %v", s, m, back, err)
			}
		}
		if dims, err := ParseDims(s); err == nil {
			for _, d := range dims {
				if d <= 0 || d > MaxLength {
					t.Errorf("ParseDims(%q) has a side of %d", s, d)
				}
			}
		}
		_, _ = ParseArea(s)
		_, _ = ParseMass(s)
		_, _ = ParseDensity(s)
		if e, err := ReadExact(s, "cu ft"); err == nil && len(e.Terms) == 0 {
			t.Errorf("ReadExact(%q) gives no terms", s)
		}
	})
}
