package mix

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/yard"
)

// At returns a copy of the job with the changes at the yard made: what is sold out is
// taken out of the offers, and what is bought already is on hand. The changes in the
// job's own Yard come first, then those of y. A plan of the copy still tells of them.
// The error is [Problems], with the paths of y, such as without[0] and bought[0]. A
// nil job is the zero Job; a nil y has no changes.
func (j *Job) At(y *yard.Yard) (*Job, error) {
	if j == nil {
		j = &Job{}
	}
	if y == nil {
		y = &yard.Yard{}
	}
	r := &doc.Reader{}
	after := j.Clone().atYard(r).apply(r, y.Clone())
	return after, r.Err()
}

// atYard is the job with the changes in its own Yard made.
func (j *Job) atYard(r *doc.Reader) *Job {
	if j.Yard == nil {
		return j
	}
	r.Enter("yard")
	defer r.Leave()
	return j.apply(r, j.Yard)
}

// apply returns a job with the changes of y made. It shares with j what y does not
// change, so j must not be a caller's.
func (j *Job) apply(r *doc.Reader, y *yard.Yard) *Job {
	after := *j
	after.Yard = nil
	if len(j.Offers) > maxOffers { // a problem later; to look all of them up would take too long
		return &after
	}
	offers, home, bought := y.Apply(r, j.Offers, j.material)
	after.Offers = offers
	after.OnHand = append(append([]yard.OnHand(nil), j.OnHand...), home...)
	after.yards = append(append([]*yard.Yard(nil), j.yards...), y)
	after.bought = append(append([]yard.Purchase(nil), j.bought...), bought...)
	return &after
}

// material finds a material among the job's own and then in the catalogue, or returns
// nil. The job has no scope yet: its offers have to be settled before it is evaluated.
func (j *Job) material(id string) *catalog.Material {
	for i := range j.Materials {
		if j.Materials[i].ID == id {
			return &j.Materials[i]
		}
	}
	plain := catalog.Plain(nil)
	if index, ok := plain.Index(id); ok {
		return plain.Material(index)
	}
	return nil
}

// ChangesFrom compares the order with that of an earlier plan of the same job, offer
// by offer. With a nil before everything is new. See [yard.Changes].
func (p *Plan) ChangesFrom(before *Plan) []yard.Change {
	return yard.Changes(before.side(), p.side())
}

// side is what a comparison needs of a plan, which may be nil.
func (p *Plan) side() (s yard.Side) {
	if p == nil {
		return s
	}
	s.Lines, s.Bought = p.Lines, p.Bought.Lines
	if p.e != nil {
		s.Offers = p.e.terms.Offers
		s.Material = func(id string) *catalog.Material {
			if index, ok := p.e.scope.Index(id); ok {
				return p.e.scope.Material(index).Clone()
			}
			return nil
		}
	}
	return s
}
