package picture

// Every sentence of the drawings. {0} and so on are what is put in.
const (
	moreTasks = "{0} more tasks are not drawn."
	morePots  = "{0} more lines are not drawn."

	bedBefore = "Before"
	bedAfter  = "After"
	bedLayer  = "{0}, {1}"
	bedNative = "Native soil, loosened, {0}"
	bedFirm   = "Soil below"
	bedRise   = "Ground rises by {0}"
	bedDeep   = "Worked in, {0} deep"
	bedShare  = "{0} of it {1}"
	bedScale  = "Depths to scale: this line is {0}. Widths are not."
	bedTold   = "The bed in section, before and after. Before: {0} of {1} spread on {2} of loosened native soil. After: worked in, {3} deep, of which {4} is {1}. The ground rises by up to {5}. Depths are to scale."

	toScale = "To scale: this line is {0}."

	mulchClear       = "{0} clear all round"
	mulchSoil        = "Soil"
	mulchBed         = "Amended bed, {0} deep"
	mulchSheets      = "{0} sheets underneath."
	mulchSheetsAbout = "About {0} sheets underneath."
	mulchTold        = "The bed in section: {0} of {1} on the soil, to scale."
	mulchBedTold     = "Underneath lies the amended bed, {0} deep."
	mulchStemsTold   = "Round each of {0} stems {1} is left clear on every side."

	potTold     = "{0}: one takes {1}, all take {2}."
	potRim      = "Filled to {0} below the rim."
	potFill     = "Fill line"
	potBall     = "Root ball {0}"
	potBallTold = "The root ball {0} in it is {1}."
	potTakes    = "Takes {0}"
	cellTakes   = "A cell takes {0}"
	potHigh     = "{0} high"
	potHighBase = "{0} high, {1} at the base"
	potGuess    = "Only its volume is known: not to scale."
	potCells    = "{0} of {1} cells are drawn."
	potAll      = "All take {0}"

	holeAbove = "Ball stands {0} above the ground."
	holeLevel = "Ball is level with the ground."
	holeLeft  = "Soil left over, loose: {0} a hole"
	holeBack  = "Soil back in: {0}"
	holeMixed = "Filled round it: {0}, of which {1} is {2}"
	holeDeep  = "Hole {0} deep"
	holeGuess = "The ball's width is worked out from its volume."
	holeAll   = "{0} holes leave {1} of loose soil."
	holeTold  = "One planting hole in section, to scale: {0} across and {1} deep, with a root ball {2}."
)

// say puts args into a template.
func (k *pen) say(template string, args ...string) string {
	var b []byte
	for i := 0; i < len(template); i++ {
		if template[i] == '{' && i+2 < len(template) && template[i+2] == '}' {
			b = append(b, args[template[i+1]-'0']...)
			i += 2
			continue
		}
		b = append(b, template[i])
	}
	return string(b)
}
