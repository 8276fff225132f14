package yard

import (
	"strconv"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// mostTurns is how many stretches a sentence lists. All of them are in
// [Crossing.Stretches].
const mostTurns = 5

// Sentence says what the need costs in bags and in bulk, and for which volumes
// bulk costs less. It has no stop at its end.
func (k *Crossing) Sentence(m lang.Printer) string {
	return m.Print("{0}. {1}", k.atNeed(m), k.turns(m))
}

// atNeed says what the need costs either way.
func (k *Crossing) atNeed(m lang.Printer) string {
	name, need := k.Material.Name, m.VolumeLike(k.Need, k.Need)
	bags, bulk := k.amount(m, k.Bags), k.amount(m, k.Bulk)
	switch {
	case k.Bags < 0 && k.Bulk < 0:
		return m.Print("{0}: neither bags alone nor bulk alone cover the {1} that you need", name, need)
	case k.Bags < 0:
		return m.Print("{0}, bought by itself: the {1} that you need cost {2} in bulk, trips counted; bags alone do not cover it", name, need, bulk)
	case k.Bulk < 0:
		return m.Print("{0}, bought by itself: the {1} that you need cost {2} in bags, trips counted; bulk alone does not cover it", name, need, bags)
	}
	return m.Print("{0}, bought by itself: the {1} that you need cost {2} in bags or {3} in bulk, trips counted", name, need, bags, bulk)
}

// amount writes an amount with its currency.
func (k *Crossing) amount(m lang.Printer, v units.Money) string {
	return k.Currency + m.Figure(v.String())
}

// turns says for which volumes bulk costs less, and where that is not known.
func (k *Crossing) turns(m lang.Printer) string {
	top := m.VolumeLike(k.Top, k.Need)
	bulk, unknown := k.only(CheaperBulk), k.only(CheaperUnknown)
	switch {
	case len(unknown) > 0:
		return k.partly(m, bulk, unknown)
	case k.Always:
		return m.Print("Bulk costs less for every volume looked at, up to {0}", top)
	case k.Never:
		return m.Print("Bulk costs less for no volume looked at, up to {0}", top)
	case len(bulk) > mostTurns && k.From > 0:
		return m.Print("Bulk costs less over {1} and in {2} stretches below that; looked at up to {0}",
			top, m.VolumeLike(k.From, k.Need), strconv.Itoa(len(bulk)-1))
	case len(bulk) > mostTurns:
		return m.Print("Bulk costs less in {3} stretches from {1} to {2}; looked at up to {0}",
			top, m.VolumeLike(bulk[0].Over, k.Need), m.VolumeLike(bulk[len(bulk)-1].UpTo, k.Need), strconv.Itoa(len(bulk)))
	}
	return m.Print("Bulk costs less {1}; looked at up to {0}", top, k.list(m, bulk))
}

// partly says for which volumes bulk costs less where that is not known for
// all.
func (k *Crossing) partly(m lang.Printer, bulk, unknown []Stretch) string {
	from, to := unknown[0].Over, unknown[len(unknown)-1].UpTo
	not := m.Print("it was not all worked out from {0} to {1}", m.VolumeLike(from, k.Need), m.VolumeLike(to, k.Need))
	if len(bulk) == 0 || len(bulk) > mostTurns {
		return m.Print("Where bulk costs less is not known: {0}", not)
	}
	return m.Print("Bulk costs less {0}; {1}", k.list(m, bulk), not)
}

// only returns the stretches in which one and the same costs less.
func (k *Crossing) only(is Cheaper) (list []Stretch) {
	for _, s := range k.Stretches {
		if s.Cheaper == is {
			list = append(list, s)
		}
	}
	return list
}

// list writes stretches as a list.
func (k *Crossing) list(m lang.Printer, stretches []Stretch) string {
	var words []string
	for _, s := range stretches {
		over, upTo := m.VolumeLike(s.Over, k.Need), m.VolumeLike(s.UpTo, k.Need)
		switch {
		case s.Over == 0:
			words = append(words, m.Print("up to {0}", upTo))
		case s.UpTo == k.Top:
			words = append(words, m.Print("over {0}", over))
		default:
			words = append(words, m.Print("over {0} up to {1}", over, upTo))
		}
	}
	return m.Text(doc.And(words))
}
