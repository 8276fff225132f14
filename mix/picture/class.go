package picture

// class is what a shape stands for. Inside the package it is a number, because
// a call with a string takes twice the download.
type class uint8

// The classes. Their names are below, and in the style sheets of those who show
// drawings.
const (
	aLabel class = iota
	aFigure
	aLeader
	aDimension
	aGrade
	aGradeOld
	aSoilFirm
	aSoilLoose
	aSoilHeap
	aSoilGrain
	aMix
	aMixGrain
	aLayer
	aLayerGrain
	aMulch
	aMulchGrain
	aSheet
	aLeaf
	aStem
	aBackfill
	aBall
	aBallGuess
	aPot
	aPotGuess
	aFillLine
	aHeap
	aBag
	aBale
	aBucket
	aBar
	aMass
	aMassWet
	aRoom
	aHatch
	aLimit
	aGrid
	aAxis
	aTick
	aBags
	aBulk
	aNeed
	aCrossing
	aCheaper
)

// classNames are the names of the classes in drawings.
var classNames = [...]string{
	aLabel:      "label",
	aFigure:     "figure",
	aLeader:     "leader",
	aDimension:  "dimension",
	aGrade:      "grade",
	aGradeOld:   "grade old",
	aSoilFirm:   "soil firm",
	aSoilLoose:  "soil loose",
	aSoilHeap:   "soil heap",
	aSoilGrain:  "soil-grain",
	aMix:        "mix",
	aMixGrain:   "mix-grain",
	aLayer:      "layer",
	aLayerGrain: "layer-grain",
	aMulch:      "mulch",
	aMulchGrain: "mulch-grain",
	aSheet:      "sheet",
	aLeaf:       "leaf",
	aStem:       "stem",
	aBackfill:   "backfill",
	aBall:       "ball",
	aBallGuess:  "ball guess",
	aPot:        "pot",
	aPotGuess:   "pot guess",
	aFillLine:   "fill-line",
	aHeap:       "heap",
	aBag:        "bag",
	aBale:       "bale",
	aBucket:     "bucket",
	aBar:        "bar",
	aMass:       "mass",
	aMassWet:    "mass wet",
	aRoom:       "room",
	aHatch:      "hatch",
	aLimit:      "limit",
	aGrid:       "grid",
	aAxis:       "axis",
	aTick:       "tick",
	aBags:       "bags",
	aBulk:       "bulk",
	aNeed:       "need",
	aCrossing:   "crossing",
	aCheaper:    "cheaper",
}

// anchor is which part of a text is at its point.
type anchor uint8

// The anchors.
const (
	atStart anchor = iota
	atMiddle
	atEnd
)

// anchorNames are the values of SVG's text-anchor.
var anchorNames = [...]string{atStart: "start", atMiddle: "middle", atEnd: "end"}
