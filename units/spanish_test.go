package units

import "testing"

// TestSpanish checks that text in Spanish, with or without accents, means the
// same as the English beside it.
func TestSpanish(t *testing.T) {
	for _, tt := range []struct {
		kind          kind
		spanish, same string
	}{
		{lengthKind, "3 pulgadas", "3 in"},
		{lengthKind, "1 pulgada", "1 in"},
		{lengthKind, "3 pulg.", "3 in"},
		{lengthKind, "2 ½ pulgadas", "2 1/2 in"},
		{lengthKind, "2 pies 6 pulgadas", "2 ft 6 in"},
		{lengthKind, "1 pie", "1 ft"},
		{lengthKind, "12-PULGADAS", "12 in"},
		{lengthKind, "3 yardas", "3 yd"},
		{lengthKind, "0.5 metros", "0.5 m"},
		{lengthKind, "20 centímetros", "20 cm"},
		{lengthKind, "20 CENTÍMETROS", "20 cm"},
		{lengthKind, "20 centimetros", "20 cm"},
		{areaKind, "240 pies cuadrados", "240 sq ft"},
		{areaKind, "240 pies²", "240 sq ft"},
		{areaKind, "22 metros cuadrados", "22 sq m"},
		{areaKind, "1 hectárea", "1 ha"},
		{volumeKind, "2 pies cúbicos", "2 cu ft"},
		{volumeKind, "2 pies cubicos", "2 cu ft"},
		{volumeKind, "1 pie cúbico", "1 cu ft"},
		{volumeKind, "2 pie³", "2 cu ft"},
		{volumeKind, "1 1/2 pies3", "1 1/2 cu ft"},
		{volumeKind, "2 yardas cúbicas", "2 cu yd"},
		{volumeKind, "½ yarda cúbica", "1/2 cu yd"},
		{volumeKind, "2 yardas", "2 cu yd"},
		{volumeKind, "7 pulgadas cúbicas", "7 cu in"},
		{volumeKind, "1 galón", "1 gal"},
		{volumeKind, "3 galones", "3 gal"},
		{volumeKind, "30 litros", "30 L"},
		{volumeKind, "250 mililitros", "250 mL"},
		{volumeKind, "2 metros cúbicos", "2 m3"},
		{volumeKind, "8 cuartos secos", "8 dry qt"},
		{massKind, "40 libras", "40 lb"},
		{massKind, "1 libra 8 onzas", "1 lb 8 oz"},
		{massKind, "18 kilos", "18 kg"},
		{massKind, "2 toneladas", "2 t"},
		{densityKind, "1100 libras por yarda cúbica", "1100 lb/cu yd"},
		{densityKind, "40 lb/pie³", "40 lb/cu ft"},
	} {
		want, err := parse(tt.same, tt.kind, false)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := parse(tt.spanish, tt.kind, false); got != want || err != nil {
			t.Errorf("%q gives %v, %v, want %v as %q", tt.spanish, got, err, want, tt.same)
		}
	}
	if r, err := ParseRatio("12.5 por ciento"); err != nil || r.String() != "12.5%" {
		t.Errorf("12.5 por ciento gives %v, %v", r, err)
	}
	if d, err := ParseDims("20 por 10 por 2 pulgadas"); err != nil || len(d) != 3 || d[2] != 2*Inch {
		t.Errorf("20 por 10 por 2 pulgadas gives %v, %v", d, err)
	}
}

// TestSpanishRefused checks that text that is ambiguous in English is not
// accepted in Spanish either.
func TestSpanishRefused(t *testing.T) {
	for _, tt := range []struct {
		kind     kind
		in, code string
	}{
		{volumeKind, "8 cuartos", "unit.ambiguous"},
		{volumeKind, "2 pies", "unit.kind"},
		{volumeKind, "2 metros", "unit.kind"},
		{areaKind, "2 yardas", "unit.kind"},
		{lengthKind, "2 libras", "unit.kind"},
		{lengthKind, "2 a 3 pulgadas", "number.range"},
		{lengthKind, "2 o 3 pulgadas", "number.range"},
		{lengthKind, "3 pulgads", "unit.unknown"},
	} {
		_, err := parse(tt.in, tt.kind, false)
		if e, ok := err.(*Error); !ok || e.Code != tt.code {
			t.Errorf("%q gives %v, want %s", tt.in, err, tt.code)
		}
	}
}
