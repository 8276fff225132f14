package sure

// Limits of a model. They keep time and memory within reason.
const (
	MaxItems   = 256  // items
	MaxFactors = 2048 // factors
	MaxTerms   = 4096 // terms in Needs, and as many in Supplies
	MaxUses    = 16   // uses in one term
	MaxFigure  = 1e9  // the figure of a factor
	MaxPieces  = 1e12 // pieces that a factor is the mean of
	MaxLitres  = 1e15 // a term, as amount and with every factor at its highest
)

// Check returns nil, or a [Faults] with everything that is wrong with the
// model.
func (m *Model) Check() error {
	var all Faults
	at := func(p Part, index, use int, c Code) { all = append(all, &Fault{p, index, use, c}) }
	switch {
	case m.Items < 0:
		at(Items, -1, -1, Negative)
	case m.Items > MaxItems:
		at(Items, -1, -1, TooMany)
	}
	if len(m.Factors) > MaxFactors {
		at(Factors, -1, -1, TooMany)
	}
	for i, f := range m.Factors {
		if c := f.fault(); c != "" {
			at(Factors, i, -1, c)
		}
	}
	m.checkTerms(Needs, m.Needs, at)
	m.checkTerms(Supplies, m.Supplies, at)
	if all == nil {
		return nil
	}
	return all
}

// must panics on a model that Check refuses, which is a mistake in the caller.
func (m *Model) must() {
	if err := m.Check(); err != nil {
		panic(err)
	}
}

// finite reports whether x is neither infinite nor NaN: for both, x-x is NaN.
func finite(x float64) bool { return x-x == 0 }

// fault returns what is wrong with the range, or "".
func (f Factor) fault() Code {
	mode := f.Typical()
	switch {
	case !finite(f.Low) || !finite(f.High) || !finite(mode):
		return NotFinite
	case f.Low < 0 || f.Pieces < 0:
		return Negative
	case f.Low > mode || mode > f.High:
		return Disorder
	case f.High > MaxFigure || f.Pieces > MaxPieces:
		return TooLarge
	}
	return ""
}

// checkTerms checks one list of terms.
func (m *Model) checkTerms(p Part, terms []Term, at func(Part, int, int, Code)) {
	if len(terms) > MaxTerms {
		at(p, -1, -1, TooMany)
	}
	for i := range terms {
		t := &terms[i]
		if t.Item < 0 || t.Item >= m.Items {
			at(p, i, -1, Unknown)
		}
		if len(t.Uses) > MaxUses {
			at(p, i, -1, TooMany)
		}
		usable := true
		for j, u := range t.Uses {
			if c := m.useFault(u); c != "" {
				at(p, i, j, c)
				usable = false
			} else if m.Factors[u.Factor].fault() != "" {
				usable = false // reported once, at the factor
			}
		}
		if c := m.amountFault(t, usable); c != "" {
			at(p, i, -1, c)
		}
	}
}

// useFault returns what is wrong with one use, or "".
func (m *Model) useFault(u Use) Code {
	switch {
	case u.Factor < 0 || u.Factor >= len(m.Factors) || u.Kind > Loss:
		return Unknown
	case u.Kind == Loss && m.Factors[u.Factor].High >= 1:
		return LossOfAll
	}
	return ""
}

// amountFault checks the litres of a term, and where its uses are sound also
// the most that they can make of them.
func (m *Model) amountFault(t *Term, usable bool) Code {
	most := t.Amount
	if usable {
		for _, u := range t.Uses {
			most *= max(u.Kind.effect(m.Factors[u.Factor].High), 1)
		}
	}
	switch {
	case !finite(t.Amount):
		return NotFinite
	case t.Amount < 0:
		return Negative
	case most > MaxLitres:
		return TooLarge
	}
	return ""
}
