package catalog

import "example.org/barrow/units"

// Blend is a mix, or a material alone, made ready to split: its parts in whole
// numbers, in the order of the mix. Blends are shared: do not change one.
type Blend struct {
	Mix   *Mix
	Parts []int64
	Whole int64 // their sum
	Of    []Ingredient
	Steps int         // parts, mixes opened up: what a task of it writes
	Loss  units.Ratio // what mixing it loses
	From  Source      // of the loss
	// Common is the catalogue's allowance for the loss, where nobody has set another.
	Common *Common
	// SettleFrom is where Mix.Settle comes from, when that is set.
	SettleFrom Source
}

// Ingredient is a material, by its index in the scope, or a blend.
type Ingredient struct {
	Material int
	Blend    *Blend // nil for a material
}

// wholeParts multiplies the parts up until all are whole; ok is false past
// maxWhole.
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

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Spread adds what v of the blend, loose, takes of each material to takes, which
// the indexes of the scope address. A mix inside the mix loses its own volume
// first. ok is false past [units.MaxVolume].
func (b *Blend) Spread(v units.Range, takes []units.Range) (ok bool) {
	var room [3][16]units.Volume
	low := appendSplit(room[0][:0], v.Low, b.Parts)
	plan := appendSplit(room[1][:0], v.Plan, b.Parts)
	high := appendSplit(room[2][:0], v.High, b.Parts)
	for i, in := range b.Of {
		part := units.Range{Low: low[i], Plan: plan[i], High: high[i]}
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

// Has reports whether the blend takes the material with an index.
func (b *Blend) Has(index int) bool {
	for _, in := range b.Of {
		if in.Blend != nil && in.Blend.Has(index) || in.Blend == nil && in.Material == index {
			return true
		}
	}
	return false
}

// HasTrait reports whether a material with the trait goes into the blend; into
// nil goes nothing.
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
