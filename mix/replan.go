package mix

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/yard"
)

// At returns the job as it stands at the yard, over what the job itself says of
// the yard, and leaves j as it is. The error is [Problems], by the paths
// without[0] and bought[0]. A nil job has no tasks, and a nil yard has not changed.
func (j *Job) At(y *yard.Yard) (*Job, error) {
	if j == nil {
		j = &Job{}
	}
	if y == nil {
		y = &yard.Yard{}
	}
	r := &doc.Reader{}
	after := j.Clone().atYard(r).apply(r, y)
	return after, r.Err()
}

// atYard is the job with what it says of the yard applied.
func (j *Job) atYard(r *doc.Reader) *Job {
	if j.Yard == nil {
		return j
	}
	r.Enter("yard")
	defer r.Leave()
	return j.apply(r, j.Yard)
}

func (j *Job) apply(r *doc.Reader, y *yard.Yard) *Job {
	after := *j
	after.Yard = nil
	offers, home := y.Apply(r, j.Offers, j.material)
	after.Offers = offers
	after.OnHand = append(append([]yard.OnHand(nil), j.OnHand...), home...)
	return &after
}

// material is the row of the job or else of the catalogue, or nil.
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

// ChangesFrom compares the order with that of an earlier plan of the same job,
// offer by offer; before may be nil. See [yard.Changes].
func (p *Plan) ChangesFrom(before *Plan) []yard.Change {
	if before == nil {
		return yard.Changes(nil, p.Lines)
	}
	return yard.Changes(before.Lines, p.Lines)
}
