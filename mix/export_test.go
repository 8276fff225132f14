package mix

import "example.org/barrow/mix/sure"

// What the tests know besides what everybody may.
const (
	MaxMixes  = maxMixes
	NineInTen = nineInTen
)

// LotFill is how full bags are on average, and BagFill each of them beside.
func LotFill() sure.Factor { return lotFill }
func BagFill() sure.Factor { return bagFill }

// NewDocument is what the top of a job document is read into.
func NewDocument() any { return &document{} }
