package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/units"
)

// Need is the loose volume of one material over all tasks, less what is on
// hand.
type Need struct {
	Material *catalog.Material
	Takes    units.Range  // over all tasks
	OnHand   units.Volume // what the grower already has of it
	Buy      units.Range  // what is left to buy

	index int // of the material in the scope
}

// NewNeed returns the need for a material, of which hand is there already. index is
// the material's in the scope.
func NewNeed(m *catalog.Material, index int, takes, hand units.Range) Need {
	buy, _ := takes.Minus(hand)
	return Need{m, takes, hand.Plan, buy, index}
}

// Wanted reports whether any of it has to be bought: more than [catalog.Slack].
func (n *Need) Wanted() bool { return n.Buy.FixedPlan().Over(slack) }

// Index returns the material's index in the scope.
func (n *Need) Index() int { return n.index }

// Mass returns the lightest and the heaviest that the need may weigh; both are
// zero when that is not known.
func (n *Need) Mass() [2]units.Mass {
	low, _ := n.Material.Mass(n.Buy.Low)
	high, _ := n.Material.Mass(n.Buy.High)
	return [2]units.Mass{low[0], high[1]}
}

// HeaviestPack returns, of the packs that the material is commonly sold in, the
// one that may weigh most. ok is false when there is none or when that is not
// known.
func (n *Need) HeaviestPack() (pack Offer, ok bool) {
	var heaviest units.Mass
	for _, sizes := range [][]catalog.Size{n.Material.Packs, n.Material.Bales} {
		for _, size := range sizes {
			one := Offer{Material: n.Material.ID, Pack: size}
			loose, _ := one.Yield(n.Material)
			if mass, _ := one.Mass(n.Material, loose.Plan); mass[1] > heaviest {
				heaviest, pack = mass[1], one
			}
		}
	}
	return pack, heaviest > 0
}
