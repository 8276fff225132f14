package lang

import (
	"strings"
	"testing"

	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

const spanish = `{"language": "es", "decimal": ",", "page": {"Add": "Agregar"}, "library": {
	"no task takes {0}": "ninguna tarea lleva {0}", "{0} hole": "{0} hoyo", "{0} holes": "{0} hoyos",
	"in": "pulg", "ft": "pie|pies", "cu ft": "pie³|pies³", "cu yd": "yd³", "lb/cu yd": "lb/yd³", "m3": "m³", "to": "a"}}`

func spanishOf(t *testing.T) *Language {
	t.Helper()
	es, err := Parse([]byte(spanish))
	if err != nil {
		t.Fatal(err)
	}
	return es
}

func TestFigure(t *testing.T) {
	es := spanishOf(t)
	for _, tt := range []struct{ in, want string }{
		{"", ""},
		{"1 cu ft", "1 pie³"},
		{"1/2 cu ft", "1/2 pie³"},
		{"1 1/2 cu ft", "1 1/2 pies³"},
		{"28.7 cu ft (1.06 cu yd, 813 L)", "28,7 pies³ (1,06 yd³, 813 L)"},
		{"18 to 29.6 cu ft", "18 a 29,6 pies³"},
		{"2 ft 6 in", "2 pies 6 pulg"},
		{"1 ft x 11 ft", "1 pie x 11 pies"},
		{"303 to 1112 lb/cu yd", "303 a 1112 lb/yd³"},
		{"1.5 m3", "1,5 m³"},
		{"71.25", "71,25"},
		{"12.5%", "12,5%"},
		{"6 (5 to 7)", "6 (5 a 7)"},
		{"#1", "#1"},
		{"1/2 yd3", "1/2 yd3"},
		{"-3 in.", "-3 pulg."},
		{"café 2. x", "café 2. x"},
	} {
		if got := es.Figure(tt.in); got != tt.want {
			t.Errorf("Figure(%q) = %q, want %q", tt.in, got, tt.want)
		}
		if got := (*Language)(nil).Figure(tt.in); got != tt.in {
			t.Errorf("in English, Figure(%q) = %q", tt.in, got)
		}
	}
	if got := (*Language)(nil).Comma(true).Figure("28.7 cu ft"); got != "28,7 cu ft" {
		t.Errorf("English with a comma: %q", got)
	}
	if got := es.Comma(false).Figure("28.7 cu ft"); got != "28.7 pies³" {
		t.Errorf("Spanish with a point: %q", got)
	}
	if (*Language)(nil).Comma(false) != nil || es.Comma(true) != es {
		t.Error("no change makes another language")
	}
}

func TestSay(t *testing.T) {
	es := spanishOf(t)
	v := Printer{Measure: units.Both, Language: es}
	for got, want := range map[string]string{
		v.Print("no task takes {0}", "peat"):             "ninguna tarea lleva peat",
		v.Print("nothing known"):                         "nothing known",
		v.Text(message.Of("no task takes {0}", "peat")):  "ninguna tarea lleva peat",
		v.Count(1, "{0} hole", "{0} holes"):              "1 hoyo",
		v.Count(64, "{0} hole", "{0} holes"):             "64 hoyos",
		Printer{}.Count(1, "{0} hole", "{0} holes"):      "1 hole",
		Printer{}.Count(0, "{0} hole", "{0} holes"):      "0 holes",
		v.Volume(units.CubicFoot * 3 / 2):                "1 1/2 pies³ (42,5 L)",
		v.VolumeLike(units.CubicFoot, 2*units.CubicFoot): "1 pie³ (28,3 L)",
		v.VolumeRange(units.CubicFoot, units.CubicYard):  "1 a 27 pies³ (28,3 a 765 L)",
		v.Length(3 * units.Inch):                         "3 pulg (7,62 cm)",
		Printer{}.Length(3 * units.Inch):                 "3 in",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if es.Code() != "es" || (*Language)(nil).Code() != "en" || (&Language{}).Code() != "en" {
		t.Error("a language has lost its name")
	}
}

func TestParseRefuses(t *testing.T) {
	for _, tt := range []struct{ why, doc string }{
		{"nothing", ""},
		{"no language", `{"library": {}}`},
		{"no forms", `{"language": "es"}`},
		{"an odd decimal mark", `{"language": "es", "decimal": ";", "library": {}}`},
		{"no text", `{"language": "es", "library": {"a": ""}}`},
		{"no text but a list", `{"language": "es", "library": {"a": ["b"]}}`},
		{"a hole lost", `{"language": "es", "library": {"a {0}": "b"}}`},
		{"a hole too many", `{"language": "es", "library": {"a": "b {0}"}}`},
		{"a hole of another kind", `{"language": "es", "library": {"a {=0}": "b {0}"}}`},
		{"a key twice", `{"language": "es", "library": {"a": "b", "a": "c"}}`},
		{"two forms with one key", `{"language": "es", "library": {"form 150": "a", "form 1091": "b"}}`},
		{"no keys", `{"language": "es", "library": []}`},
		{"a key too few", `{"language": "es", "library": ["00000a", "a", "b"]}`},
		{"a key that is no number", `{"language": "es", "library": ["00000x", "a"]}`},
		{"too large", `{"language": "es", "library": {"a": "` + strings.Repeat("b", MaxBytes) + `"}}`},
	} {
		if es, err := Parse([]byte(tt.doc)); err == nil || es != nil {
			t.Errorf("%s: no error", tt.why)
		}
	}
}
