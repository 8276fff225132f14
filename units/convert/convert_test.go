package convert

import (
	"errors"
	"testing"

	"example.org/barrow/units"
)

// TestQuantity checks what Quantity refuses, and how many digits it gives.
func TestQuantity(t *testing.T) {
	for _, tt := range []struct {
		quantity, unit string
		text           string
		exact          bool
		code           string
	}{
		{"2 yd3", "cu ft", "54 cu ft", true, ""},
		{"2 yards", "cubic feet", "54 cu ft", true, ""},
		{"2 yards", "FT", "6 ft", true, ""},
		{"5 ft 3 in", "cm", "160.02 cm", true, ""},
		{"1 tsp", "mL", "4.92892159375 mL", true, ""},
		{"1 L", "gal", "0.264172052358148 gal", false, ""},
		{"1 mL", "cu yd", "0.00000130795061931439 cu yd", false, ""},
		{"10%", "%", "10 %", true, ""},
		{"0 L", "gal", "0 gal", true, ""},
		{"3 lb", "ft", "", false, "unit.kind"},
		{"1 ft", "zorks", "", false, "unit.unknown"},
		{"1 ft", "ydd", "", false, "unit.unknown"},
		{"40 liq qt", "qt", "", false, "unit.ambiguous"},
		{"1 ft", "", "", false, "unit.missing"},
		{"1 ft", "3 in", "", false, "unit.missing"},
		{"1 ft", "\xff", "", false, "text.utf8"},
		{"", "ft", "", false, "quantity.empty"},
	} {
		c, err := Quantity(tt.quantity, tt.unit)
		var e *units.Error
		if errors.As(err, &e) {
			if e.Code != tt.code {
				t.Errorf("Quantity(%q, %q): %s (%v), want %s", tt.quantity, tt.unit, e.Code, err, tt.code)
			}
			continue
		}
		if c.String() != tt.text || c.Exact() != tt.exact || tt.code != "" {
			t.Errorf("Quantity(%q, %q) = %s, exact %v, want %s, %v",
				tt.quantity, tt.unit, c, c.Exact(), tt.text, tt.exact)
		}
	}
}
