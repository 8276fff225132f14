package convert

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"example.org/barrow/units"
)

// gnuNames is the name in GNU units of each unit in the table. That program's
// definitions come from its own authors, so it is an independent reference.
var gnuNames = map[string]string{
	"in": "inch", "ft": "foot", "yd": "yard", "mm": "mm", "cm": "cm", "m": "m", "mi": "mile", "km": "km",
	"sq ft": "foot^2", "sq in": "inch^2", "sq yd": "yard^2", "sq m": "m^2", "sq cm": "cm^2", "acre": "intacre", "ha": "hectare",
	"cu ft": "foot^3", "cu yd": "yard^3", "cu in": "inch^3", "L": "liter", "mL": "milliliter", "m3": "m^3",
	"gal": "gallon", "liq qt": "quart", "liq pt": "pint", "cup": "cup", "fl oz": "floz", "tbsp": "tablespoon", "tsp": "teaspoon",
	"dry qt": "dryquart", "dry pt": "drypint", "dry gal": "drygallon", "peck": "peck", "bu": "bushel",
	"imp gal": "brgallon", "imp qt": "brquart", "imp pt": "brpint", "imp bu": "brbushel",
	"lb": "lb", "oz": "oz", "kg": "kg", "g": "g", "ton": "shortton", "t": "tonne",
	"lb/cu yd": "lb/yard^3", "lb/cu ft": "lb/foot^3", "kg/m3": "kg/m^3", "g/L": "g/liter", "g/cm3": "g/cm^3",
	"%": "percent",
}

// TestAgainstGNUUnits checks every pair that Quantity can convert, to the last
// digits of a float64.
func TestAgainstGNUUnits(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("a browser has no other programs; the native run asks GNU units")
	}
	program, err := exec.LookPath("units")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("GNU units is not installed; on CI it must be")
		}
		t.Skip("GNU units is not installed")
	}
	var in bytes.Buffer
	var pairs [][2]units.Unit
	for _, from := range units.Units() {
		for _, to := range units.Units() {
			if from.Kind == to.Kind {
				pairs = append(pairs, [2]units.Unit{from, to})
				in.WriteString("7.25 " + gnuNames[from.Name] + "\n" + gnuNames[to.Name] + "\n")
			}
		}
	}
	cmd := exec.Command(program, "-t", "-o", "%.17g")
	cmd.Stdin = &in
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(lines) != len(pairs) {
		t.Fatalf("%d answers for %d pairs", len(lines), len(pairs))
	}
	for i, p := range pairs {
		want, err := strconv.ParseFloat(lines[i], 64)
		if err != nil {
			t.Fatalf("7.25 %s to %s: units says %q", p[0].Name, p[1].Name, lines[i])
		}
		c, err := Quantity("7.25 "+p[0].Name, p[1].Name)
		if err != nil {
			t.Errorf("Quantity(7.25 %s, %s): %v", p[0].Name, p[1].Name, err)
			continue
		}
		if off := math.Abs(c.Float()-want) / want; off > 1e-14 {
			t.Errorf("7.25 %s = %s, GNU units says %s %s", p[0].Name, c, lines[i], p[1].Name)
		}
		if shown, _ := strconv.ParseFloat(c.Number(), 64); math.Abs(shown-want)/want > 1e-13 {
			t.Errorf("7.25 %s is shown as %s, GNU units says %s", p[0].Name, c, lines[i])
		}
	}
	t.Logf("%d pairs", len(pairs))
}
