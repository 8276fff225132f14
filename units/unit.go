package units

import "example.org/barrow/units/message"

// kind is what a unit measures.
type kind uint8

// The kinds of quantity that have units.
const (
	lengthKind kind = iota
	areaKind
	volumeKind
	massKind
	densityKind
	ratioKind
)

// kinds holds, for each kind, its names and the largest count accepted.
var kinds = [...]struct {
	name    message.Text
	article message.Text // the name with its article
	example string       // for hints
	max     int64
}{
	lengthKind:  {"length", "a length", "3 in", int64(MaxLength)},
	areaKind:    {"area", "an area", "240 sq ft", int64(MaxArea)},
	volumeKind:  {"volume", "a volume", "1 1/2 cu ft", int64(MaxVolume)},
	massKind:    {"weight", "a weight", "40 lb", int64(MaxMass)},
	densityKind: {"weight per volume", "a weight per volume", "1100 lb/cu yd", int64(MaxDensity)},
	ratioKind:   {"share", "a share", "10%", maxRatio},
}

// unit is one row of the table. One of it is num/den base counts of its kind.
type unit struct {
	name     string // as printed; parses
	kind     kind
	num, den uint64
	also     string // other spellings, English and Spanish, folded, separated by |
	// loose lists spellings that are understood only where the kind is already
	// known: a "yard" is a cubic yard only where a volume is expected.
	loose string
}

// Base counts of the units that others are made of.
const (
	inch = 25_400_000    // nm: the international inch, NIST Handbook 44 App. C
	sqIn = 645_160_000   // µm²: 25.4 mm squared
	cuIn = 16_387_064    // nL: 25.4 mm cubed
	lb   = 453_592_370   // µg: the avoirdupois pound, NIST Handbook 44 App. C
	iGal = 4_546_090_000 // nL: the imperial gallon, NIST SP 811 App. B
	acre = 43_560 * 144  // sq in
	cuYd = 46_656 * cuIn // nL
	gal  = 231 * cuIn    // nL
	kg   = 1_000_000_000 // µg
	gCm3 = 1_000_000_000 // µg/L
)

// table lists every unit, with exact values from NIST Handbook 44 Appendix C
// and NIST Special Publication 811 Appendix B. Within a kind, hints offer the
// units in this order.
var table = []unit{
	{"in", lengthKind, inch, 1, `inch|inches|ins|"|''|pulg|pulgada|pulgadas`, ""},
	{"ft", lengthKind, 12 * inch, 1, "foot|feet|'|pie|pies", ""},
	{"yd", lengthKind, 36 * inch, 1, "yds|yard|yards|yarda|yardas", ""},
	{"mm", lengthKind, 1_000_000, 1, "millimetre|millimetres|millimeter|millimeters|milimetro|milimetros", ""},
	{"cm", lengthKind, 10_000_000, 1, "centimetre|centimetres|centimeter|centimeters|centimetro|centimetros", ""},
	{"m", lengthKind, 1_000_000_000, 1, "metre|metres|meter|meters|metro|metros", ""},
	{"mi", lengthKind, 63_360 * inch, 1, "mile|miles|milla|millas", ""},
	{"km", lengthKind, 1_000_000_000_000, 1, "kilometre|kilometres|kilometer|kilometers|kilometro|kilometros", ""},

	{"sq ft", areaKind, 144 * sqIn, 1, "sqft|ft2|sq foot|sq feet|square foot|square feet|sf|pie2|pies2|pie cuadrado|pies cuadrados", ""},
	{"sq in", areaKind, sqIn, 1, "sqin|in2|sq inch|sq inches|square inch|square inches|pulg2|pulgada cuadrada|pulgadas cuadradas", ""},
	{"sq yd", areaKind, 1296 * sqIn, 1, "sqyd|yd2|sq yds|sq yard|sq yards|square yard|square yards|yarda cuadrada|yardas cuadradas", ""},
	{"sq m", areaKind, 1_000_000_000_000, 1, "sqm|m2|sq metre|sq metres|sq meter|sq meters|square metre|square metres|square meter|square meters|metro cuadrado|metros cuadrados", ""},
	{"sq cm", areaKind, 100_000_000, 1, "sqcm|cm2|square centimetre|square centimetres|square centimeter|square centimeters|centimetro cuadrado|centimetros cuadrados", ""},
	{"acre", areaKind, acre * sqIn, 1, "acres|ac", ""},
	{"ha", areaKind, 10_000_000_000_000_000, 1, "hectare|hectares|hectarea|hectareas", ""},

	{"cu ft", volumeKind, 1728 * cuIn, 1, "cuft|ft3|cu foot|cu feet|cubic foot|cubic feet|cf|pie3|pies3|pie cubico|pies cubicos", ""},
	{"cu yd", volumeKind, cuYd, 1, "cuyd|yd3|cu yds|cu yard|cu yards|cubic yard|cubic yards|cy|yarda cubica|yardas cubicas", "yd|yds|yard|yards|yarda|yardas"},
	{"cu in", volumeKind, cuIn, 1, "cuin|in3|cu inch|cu inches|cubic inch|cubic inches|ci|pulg3|pulgada cubica|pulgadas cubicas", ""},
	{"L", volumeKind, 1_000_000_000, 1, "l|ltr|litre|litres|liter|liters|dm3|litro|litros", ""},
	{"mL", volumeKind, 1_000_000, 1, "ml|millilitre|millilitres|milliliter|milliliters|cc|cm3|cu cm|mililitro|mililitros", ""},
	{"m3", volumeKind, 1_000_000_000_000, 1, "cum|cu m|cu metre|cu metres|cu meter|cu meters|cubic metre|cubic metres|cubic meter|cubic meters|metro cubico|metros cubicos", ""},
	{"gal", volumeKind, gal, 1, "gals|gallon|gallons|us gal|us gallon|us gallons|liq gal|galon|galones", ""},
	{"liq qt", volumeKind, gal, 4, "liquid quart|liquid quarts|liq quart|liq quarts|liquid qt|us liq qt|cuarto liquido|cuartos liquidos", ""},
	{"liq pt", volumeKind, gal, 8, "liquid pint|liquid pints|liq pint|liq pints|liquid pt|us liq pt|pinta liquida|pintas liquidas", ""},
	{"cup", volumeKind, gal, 16, "cups|us cup|us cups|taza|tazas", ""},
	{"fl oz", volumeKind, gal, 128, "floz|fluid ounce|fluid ounces|us fl oz|oz liq|onza liquida|onzas liquidas", ""},
	{"tbsp", volumeKind, gal, 256, "tablespoon|tablespoons|cda|cdas|cucharada|cucharadas", ""},
	{"tsp", volumeKind, gal, 768, "teaspoon|teaspoons|cdta|cdtas|cucharadita|cucharaditas", ""},
	{"dry qt", volumeKind, bushelNum, 32 * bushelDen, "dry quart|dry quarts|us dry qt|cuarto seco|cuartos secos", ""},
	{"dry pt", volumeKind, bushelNum, 64 * bushelDen, "dry pint|dry pints|us dry pt|pinta seca|pintas secas", ""},
	{"dry gal", volumeKind, bushelNum, 8 * bushelDen, "dry gallon|dry gallons|us dry gal|galon seco|galones secos", ""},
	{"peck", volumeKind, bushelNum, 4 * bushelDen, "pecks|pk", ""},
	{"bu", volumeKind, bushelNum, bushelDen, "bushel|bushels|us bu", ""},
	{"imp gal", volumeKind, iGal, 1, "imperial gallon|imperial gallons|imp gallon|imp gallons|uk gal|gal imp|galon imperial|galones imperiales", ""},
	{"imp qt", volumeKind, iGal, 4, "imperial quart|imperial quarts|imp quart|imp quarts|uk qt", ""},
	{"imp pt", volumeKind, iGal, 8, "imperial pint|imperial pints|imp pint|imp pints|uk pt", ""},
	{"imp bu", volumeKind, 8 * iGal, 1, "imperial bushel|imperial bushels|imp bushel|imp bushels|uk bu", ""},

	{"lb", massKind, lb, 1, "lbs|pound|pounds|libra|libras", ""},
	{"oz", massKind, lb, 16, "ounce|ounces|onza|onzas", ""},
	{"kg", massKind, kg, 1, "kgs|kilo|kilos|kilogram|kilograms|kilogramo|kilogramos", ""},
	{"g", massKind, 1_000_000, 1, "gram|grams|gm|gramo|gramos", ""},
	{"ton", massKind, 2000 * lb, 1, "tons|short ton|short tons|us ton|us tons|ton corta|ton cortas|tonelada corta|toneladas cortas", ""},
	{"t", massKind, 1000 * kg, 1, "tonne|tonnes|metric ton|metric tons|tonelada|toneladas", ""},

	{"lb/cu yd", densityKind, lb * 1_000_000_000, cuYd, "lb/yd3|lbs/yd3|lbs/cu yd|lb/cubic yard|pounds/cubic yard|lb/yd|lb/yard|libras/yarda cubica|lb/yarda cubica|libras/yd3", ""},
	{"lb/cu ft", densityKind, lb * 1_000_000_000, 1728 * cuIn, "lb/ft3|lbs/ft3|lbs/cu ft|lb/cubic foot|pounds/cubic foot|lb/pie3|libras/pie cubico|lb/pie cubico", ""},
	{"kg/m3", densityKind, 1_000_000, 1, "kg/cu m|kg/cubic metre|kg/cubic meter|kg/metro cubico", ""},
	{"g/L", densityKind, 1_000_000, 1, "g/l", ""},
	{"g/cm3", densityKind, gCm3, 1, "g/cc|g/ml|t/m3|kg/l", ""},

	{"%", ratioKind, 1, 100, "percent|per cent|pct|por ciento", ""},
}

// The struck bushel is 2150.42 cubic inches, 215,042/100.
const (
	bushelNum = 215_042 * cuIn
	bushelDen = 100
)

// doubtful lists spellings that could be either of two units, too different to
// guess between.
var doubtful = []struct {
	kind         kind
	names, which string
}{
	{volumeKind, "qt|qts|quart|quarts|cuarto|cuartos", "dry qt|liq qt"},
	{volumeKind, "pt|pts|pint|pints|pinta|pintas", "dry pt|liq pt"},
	{volumeKind, "oz|ounce|ounces|onza|onzas", "fl oz"},
	{volumeKind, "ft|foot|feet|pie|pies|'", "cu ft"},
	{volumeKind, `in|inch|inches|pulg|pulgada|pulgadas|"`, "cu in"},
	{volumeKind, "m|metre|metres|meter|meters|metro|metros", "m3"},
	{areaKind, "ft|foot|feet|pie|pies|'", "sq ft"},
	{areaKind, "yd|yard|yards|yarda|yardas", "sq yd"},
	{areaKind, "m|metre|metres|meter|meters|metro|metros", "sq m"},
}

// find returns the unit of kind k that is spelled text (folded), or nil.
func find(k kind, text []byte) *unit {
	if len(text) == 0 {
		return nil
	}
	for i := range table {
		u := &table[i]
		if u.kind == k && (u.spelled(text) || spelledIn(u.loose, text)) {
			return u
		}
	}
	return nil
}

// findAny returns the first unit of any kind that is spelled text (folded),
// ignoring loose spellings, or nil.
func findAny(text []byte) *unit {
	for i := range table {
		if table[i].spelled(text) {
			return &table[i]
		}
	}
	return nil
}

// spelled reports whether text (folded) is one of u's own spellings.
func (u *unit) spelled(text []byte) bool {
	return sameFolded(u.name, text) || spelledIn(u.also, text)
}

// sameFolded reports whether name, with its letters made small, is text.
func sameFolded(name string, text []byte) bool {
	if len(name) != len(text) {
		return false
	}
	for i := range text {
		if lower(name[i]) != text[i] {
			return false
		}
	}
	return true
}

// spelledIn reports whether text is one of the words in list, which |
// separates.
func spelledIn(list string, text []byte) bool {
	for len(list) > 0 {
		n := 0
		for n < len(list) && list[n] != '|' {
			n++
		}
		if list[:n] == string(text) {
			return true
		}
		list = list[min(n+1, len(list)):]
	}
	return false
}
