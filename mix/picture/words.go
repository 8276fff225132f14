package picture

import "example.org/barrow/units/say"

// Every sentence of the drawings. {0} and so on are what is put in.
const (
	moreTasks say.Phrase = "{0} more tasks are not drawn."
	morePots  say.Phrase = "{0} more lines are not drawn."

	bedBefore say.Phrase = "Before"
	bedAfter  say.Phrase = "After"
	bedLayer  say.Phrase = "{0}, {1}"
	bedNative say.Phrase = "Native soil, loosened, {0}"
	bedFirm   say.Phrase = "Soil below"
	bedRise   say.Phrase = "Ground rises by {0}"
	bedDeep   say.Phrase = "Worked in, {0} deep"
	bedShare  say.Phrase = "{0} of it {1}"
	bedScale  say.Phrase = "Depths to scale: this line is {0}. Widths are not."
	bedTold   say.Phrase = "The bed in section, before and after. Before: {0} of {1} spread on {2} of loosened native soil. After: worked in, {3} deep, of which {4} is {1}. The ground rises by up to {5}. Depths are to scale."

	toScale say.Phrase = "To scale: this line is {0}."

	mulchClear       say.Phrase = "{0} clear all round"
	mulchSoil        say.Phrase = "Soil"
	mulchBed         say.Phrase = "Amended bed, {0} deep"
	mulchSheets      say.Phrase = "{0} sheets underneath."
	mulchSheetsAbout say.Phrase = "About {0} sheets underneath."
	mulchTold        say.Phrase = "The bed in section: {0} of {1} on the soil, to scale."
	mulchBedTold     say.Phrase = "Underneath lies the amended bed, {0} deep."
	mulchStemsTold   say.Phrase = "Round each of {0} stems {1} is left clear on every side."

	potTold     say.Phrase = "{0}: one takes {1}, all take {2}."
	potRim      say.Phrase = "Filled to {0} below the rim."
	potFill     say.Phrase = "Fill line"
	potBall     say.Phrase = "Root ball {0}"
	potBallTold say.Phrase = "The root ball {0} in it is {1}."
	potTakes    say.Phrase = "Takes {0}"
	cellTakes   say.Phrase = "A cell takes {0}"
	potHigh     say.Phrase = "{0} high"
	potHighBase say.Phrase = "{0} high, {1} at the base"
	potGuess    say.Phrase = "Only its volume is known: not to scale."
	potCells    say.Phrase = "{0} of {1} cells are drawn."
	potAll      say.Phrase = "All take {0}"

	holeAbove say.Phrase = "Ball stands {0} above the ground."
	holeLevel say.Phrase = "Ball is level with the ground."
	holeLeft  say.Phrase = "Soil left over, loose: {0} a hole"
	holeBack  say.Phrase = "Soil back in: {0}"
	holeMixed say.Phrase = "Filled round it: {0}, of which {1} is {2}"
	holeDeep  say.Phrase = "Hole {0} deep"
	holeGuess say.Phrase = "The ball's width is worked out from its volume."
	holeAll   say.Phrase = "{0} holes leave {1} of loose soil."
	holeTold  say.Phrase = "One planting hole in section, to scale: {0} across and {1} deep, with a root ball {2}."
)

// say puts args into a form, in the reader's language.
func (k *pen) say(form say.Phrase, args ...string) string { return k.p.Tongue.Say(form, args...) }
