package sure

import "slices"

// Part names the list of a model that contains a fault.
type Part string

// The parts of a model.
const (
	Items    Part = "items"
	Factors  Part = "factors"
	Needs    Part = "needs"
	Supplies Part = "supplies"
)

// Code says what is wrong. Codes are stable; the text of an error may change.
type Code string

// The codes of a fault.
const (
	NotFinite Code = "not a finite number"
	Negative  Code = "below zero"
	Disorder  Code = "low, mode and high are not in order"
	Unknown   Code = "refers to what is not there"
	LossOfAll Code = "a loss reaches 1"
	TooLarge  Code = "too large"
	TooMany   Code = "too many"
)

// Fault is one thing wrong with a model. Index is the position in the part, and
// Use the position in the term's uses; each is -1 where it does not apply.
type Fault struct {
	Part       Part
	Index, Use int
	Code       Code
}

// Error returns the place and the code, as in "needs[2].uses[0]: refers to what
// is not there".
func (f *Fault) Error() string {
	s := string(f.Part)
	if f.Index >= 0 {
		s += "[" + decimal(f.Index) + "]"
	}
	if f.Use >= 0 {
		s += ".uses[" + decimal(f.Use) + "]"
	}
	return s + ": " + string(f.Code)
}

// Faults is everything wrong with a model, in the model's order.
type Faults []*Fault

// Error returns one line for each fault.
func (f Faults) Error() string {
	var s string
	for i, one := range f {
		if i > 0 {
			s += "\n"
		}
		s += one.Error()
	}
	return s
}

// Unwrap lets errors.As find the first fault.
func (f Faults) Unwrap() []error {
	out := make([]error, len(f))
	for i, one := range f {
		out[i] = one
	}
	return out
}

// decimal writes n >= 0. The package does not import strconv, to stay small.
func decimal(n int) string {
	var digits []byte
	for ; n > 9; n /= 10 {
		digits = append(digits, byte('0'+n%10))
	}
	digits = append(digits, byte('0'+n))
	slices.Reverse(digits)
	return string(digits)
}
