package lang_test

import (
	"strings"
	"testing"

	"example.org/barrow/units"
	"example.org/barrow/units/convert"
)

// TestUnitsParseBack checks that what a language writes for a unit, for one and
// for many, is understood as that unit when somebody types it.
func TestUnitsParseBack(t *testing.T) {
	es := spanishFile(t)
	for _, u := range units.Units() {
		for name := range strings.SplitSeq(es.Form(u.Name), "|") {
			c, err := convert.Quantity("3 "+name, u.Name)
			if err != nil || c.Float() != 3 {
				t.Errorf("%s, written %s: %v, %v", u.Name, name, c, err)
			}
		}
	}
}
