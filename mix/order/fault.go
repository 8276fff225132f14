package order

import "strconv"

// Code says why there is no order. Its words are stable.
type Code string

// The codes of an [Error].
const (
	ErrNoOffer  Code = "order.none"  // a material is needed and not on offer
	ErrShort    Code = "order.short" // the stock does not cover the need
	ErrTooHeavy Code = "order.heavy" // no pack of the material fits a vehicle
	ErrRange    Code = "order.range" // a figure is out of range
)

// Error makes a Code a target of errors.Is.
func (c Code) Error() string { return string(c) }

// Error says why there is no order. It wraps its Code.
type Error struct {
	Code     Code
	Material int // index into Needs; -1 when none is at fault
	Offer    int // index into Offers; -1 when none is at fault
}

// text says what the code means, in English.
func (c Code) text() string {
	switch c {
	case ErrNoOffer:
		return "needed and not on offer"
	case ErrShort:
		return "the stock does not cover the need"
	case ErrTooHeavy:
		return "no pack of it fits the vehicle"
	}
	return "a figure is out of range"
}

// Error names the material and the offer at fault, counting from zero.
func (e *Error) Error() string {
	s := e.Code.text()
	if e.Offer >= 0 {
		s = "offer " + strconv.Itoa(e.Offer) + ": " + s
	}
	if e.Material >= 0 {
		s = "material " + strconv.Itoa(e.Material) + ": " + s
	}
	return s
}

// Unwrap returns the Code.
func (e *Error) Unwrap() error { return e.Code }
