package picture

import (
	"example.org/barrow/units"
	"example.org/barrow/units/say"
)

// Every sentence of the drawings. {0} and so on are what is put in.
const (
	moreTasks say.Phrase = "Tasks not drawn: {0}."
	morePots  say.Phrase = "Lines not drawn: {0}."

	moreHeaps  say.Phrase = "Materials not drawn: {0}."
	moreStacks say.Phrase = "Kinds of packs not drawn: {0}."
	moreTrips  say.Phrase = "Trips not drawn: {0}."

	heapNeed  say.Phrase = "You need {0}"
	heapTold  say.Phrase = "A heap of {0} of {1} beside the packs that make it; the same area is the same volume."
	heapBuy   say.Phrase = "Buy {0}"
	heapOr    say.Phrase = "Instead of these: {0}"
	heapIs    say.Phrase = "That is {0}"
	heapScale say.Phrase = "To scale: the same area is the same volume, as carried."
	packOne   say.Phrase = "1 bag of {1}"
	packBags  say.Phrase = "{0} bags of {1}"
	packBale  say.Phrase = "1 bale of {1}"
	packBales say.Phrase = "{0} bales of {1}"
	packOpen  say.Phrase = "1 bale of {1} that opens to {2}"
	packOpens say.Phrase = "{0} bales of {1}, each opens to {2}"
	packLoad  say.Phrase = "1 load of {1} from the loader"
	packBulk  say.Phrase = "{0} loads of {1} from the loader"
	packEach  say.Phrase = "One box is {0} of them."

	tripDrive  say.Phrase = "Drive {0}"
	tripDrives say.Phrase = "Drives {0} to {1}"
	tripDrop   say.Phrase = "Delivery {0}"
	tripDrops  say.Phrase = "Deliveries {0} to {1}"
	tripFull   say.Phrase = "{0}: full by {1}"
	tripByMass say.Phrase = "weight"
	tripByRoom say.Phrase = "room"
	tripPack   say.Phrase = "{0} x {1} {2}"
	tripMass   say.Phrase = "Weight {0} of {1}"
	tripNoMass say.Phrase = "Weight not known"
	tripRoom   say.Phrase = "Room {0} of {1}"
	tripRange  say.Phrase = "The hatched part is how much more the load weighs when it is wet."
	tripsTold  say.Phrase = "What each trip carries, against the limits."
	tripsDrive say.Phrase = "Drives"
	tripsDrop  say.Phrase = "Deliveries"

	costTold   say.Phrase = "What it costs in bags and in bulk by the volume, trips counted, up to {0}."
	costBags   say.Phrase = "Bags"
	costBulk   say.Phrase = "Bulk"
	costNeed   say.Phrase = "You need {0}"
	costFrom   say.Phrase = "Bulk is cheaper from {0} on"
	costMoney  say.Phrase = "Cost, trips counted, in {0}"
	costPlain  say.Phrase = "Cost, trips counted"
	costVolume say.Phrase = "Volume, {0}"

	bedBefore  say.Phrase = "Before"
	bedAfter   say.Phrase = "After"
	bedLayer   say.Phrase = "{0}, {1}"
	bedNative  say.Phrase = "Native soil, loosened, {0}"
	bedFirm    say.Phrase = "Soil below"
	bedRise    say.Phrase = "Ground rises by {0}"
	bedDeep    say.Phrase = "Worked in, {0} deep"
	bedShare   say.Phrase = "{0} of it {1}"
	bedScale   say.Phrase = "Depths to scale: this line is {0}. Widths are not."
	bedSettles say.Phrase = "Depths are as spread: once settled the bed is {0} lower."
	bedTold    say.Phrase = "The bed in section, before and after. Before: {0} of {1} spread on {2} of loosened native soil. After: worked in, {3} deep, of which {4} is {1}. The ground rises by up to {5}. Depths are to scale."

	toScale say.Phrase = "To scale: this line is {0}."

	mulchClear       say.Phrase = "{0} clear all round"
	mulchSoil        say.Phrase = "Soil"
	mulchBed         say.Phrase = "Amended bed, {0} deep"
	mulchSheets      say.Phrase = "Sheets underneath: {0}."
	mulchSheetsAbout say.Phrase = "Sheets underneath, about: {0}."
	mulchTold        say.Phrase = "The bed in section: {0} of {1} on the soil, to scale."
	mulchBedTold     say.Phrase = "Underneath lies the amended bed, {0} deep."
	mulchStemsTold   say.Phrase = "{1} is left clear all round every stem; stems: {0}."

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
	potCells    say.Phrase = "Cells: {1}, of which {0} are drawn."
	potAll      say.Phrase = "All take {0}"

	holeAbove say.Phrase = "Ball stands {0} above the ground."
	holeLevel say.Phrase = "Ball is level with the ground."
	holeLeft  say.Phrase = "Soil left over, loose: {0} a hole"
	holeBack  say.Phrase = "Soil back in: {0}"
	holeMixed say.Phrase = "Filled round it: {0}, of which {1} is {2}"
	holeDeep  say.Phrase = "Hole {0} deep"
	holeGuess say.Phrase = "The ball's width is worked out from its volume."
	holeAll   say.Phrase = "All holes, {0}, leave {1} of loose soil."
	holeTold  say.Phrase = "One planting hole in section, to scale: {0} across and {1} deep, with a root ball {2}."
)

// say puts args into a form, in the reader's language.
//
//go:noinline
func (k *pen) say(form say.Phrase, args ...string) string { return k.p.Tongue.Say(form, args...) }

//go:noinline
func (k *pen) length(l units.Length) string { return k.p.Voice().Length(l) }

//go:noinline
func (k *pen) volume(v units.Volume) string { return k.p.Voice().Volume(v) }
