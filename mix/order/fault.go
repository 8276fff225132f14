package order

import "strconv"

// Code says why there is no order. The words are stable.
type Code string

const (
	ErrNoOffer  Code = "order.none"  // a material is needed and nobody sells it
	ErrShort    Code = "order.short" // the stock does not cover the need
	ErrTooHeavy Code = "order.heavy" // no pack of the material fits a vehicle
	ErrRange    Code = "order.range" // a figure is out of range
)

// Error lets a Code be the target of errors.Is.
func (c Code) Error() string { return string(c) }

// Error is why there is no order. errors.Is finds its Code.
type Error struct {
	Code     Code
	Material int // index into Needs; -1 when none is at fault
	Offer    int // index into Offers; -1 when none is at fault
}

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

// Error names the material and the offer at fault, counted from zero.
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

// Unwrap gives the Code.
func (e *Error) Unwrap() error { return e.Code }
