package lang_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/convert"
)

// TestUnitsParseBack checks that what a language writes for a unit, for one and
// for many, is understood as that unit when somebody types it.
func TestUnitsParseBack(t *testing.T) {
	files, err := filepath.Glob("../../web/text/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no language files", err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		l, err := lang.Parse(data)
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		for _, u := range units.Units() {
			for name := range strings.SplitSeq(l.Form(u.Name), "|") {
				c, err := convert.Quantity("3 "+name, u.Name)
				if err != nil || c.Float() != 3 {
					t.Errorf("%s: %s, written %s: %v, %v", l.Code(), u.Name, name, c, err)
				}
			}
		}
	}
}
