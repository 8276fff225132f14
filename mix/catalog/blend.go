package catalog

import "example.org/barrow/units"

// Blend is a mix, or a material alone, prepared for splitting: its parts as
// whole numbers, in the order of the mix. Blends are shared and must not be
// changed.
type Blend struct {
	Mix   *Mix
	Parts []int64
	Whole int64 // their sum
	Of    []Ingredient
	Steps int         // how many parts there are with the mixes opened up
	Loss  units.Ratio // share of the volume that mixing loses
	From  Source      // of the loss
	// Common is the catalogue's allowance for the loss, when the mix has none
	// of its own.
	Common *Common
	// SettleFrom is the source of Mix.Settle, when that is set.
	SettleFrom Source
}

// Ingredient is a material, given by its index in the scope, or a blend.
type Ingredient struct {
	Material int
	Blend    *Blend // nil for a material
}

// wholeParts multiplies the parts until all are whole numbers, as small as
// possible. ok is false past maxWhole.
func wholeParts(parts []Part) (out []int64, sum int64, ok bool) {
	common := int64(1)
	for _, p := range parts {
		common = common / gcd(common, p.Den) * p.Den
		if common > maxWhole {
			return nil, 0, false
		}
	}
	out = make([]int64, len(parts))
	shared := int64(0)
	for i, p := range parts {
		out[i] = p.Num * (common / p.Den)
		shared = gcd(shared, out[i])
	}
	for i := range out {
		out[i] /= max(shared, 1)
		sum += out[i]
	}
	return out, sum, sum <= maxWhole
}

// gcd returns the greatest common divisor of a and b.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Spread adds to takes what a loose volume v of the blend takes of each
// material. takes has one entry for each material of the scope. Volume that is
// lost in mixing a mix inside the mix is added first. ok is false when a sum is
// more than [units.MaxVolume].
func (b *Blend) Spread(v units.Range, takes []units.Range) (ok bool) {
	var room [3][16]units.Volume
	low := appendSplit(room[0][:0], v.Low, b.Parts)
	plan := appendSplit(room[1][:0], v.Plan, b.Parts)
	high := appendSplit(room[2][:0], v.High, b.Parts)
	for i, in := range b.Of {
		part := v.Part(low[i], plan[i], high[i], b.Parts[i], b.Whole)
		if in.Blend != nil {
			grown, ok := part.MulDiv(Without(in.Blend.Loss))
			if !ok || !in.Blend.Spread(grown, takes) {
				return false
			}
			continue
		}
		if takes[in.Material], ok = takes[in.Material].Plus(part); !ok {
			return false
		}
	}
	return true
}

// Has reports whether the blend contains the material with an index, at any
// depth.
func (b *Blend) Has(index int) bool {
	for _, in := range b.Of {
		if in.Blend != nil && in.Blend.Has(index) || in.Blend == nil && in.Material == index {
			return true
		}
	}
	return false
}

// HasTrait reports whether the blend contains a material with the trait. A nil
// blend contains none.
func (s *Scope) HasTrait(b *Blend, trait string) bool {
	if b == nil {
		return false
	}
	for _, in := range b.Of {
		if in.Blend != nil && s.HasTrait(in.Blend, trait) || in.Blend == nil && s.materials[in.Material].Has(trait) {
			return true
		}
	}
	return false
}

// Without returns n/d, the factor that makes up for a loss: 1 / (1 - loss).
func Without(loss units.Ratio) (n, d int64) { return loss.Den(), loss.Den() - loss.Num() }
