package mix_test

import (
	"encoding/json"
	"math/big"
	"strconv"
	"strings"
)

// object is a JSON object on its way out.
type object map[string]any

func (o object) put(name string, q *typed) {
	if q != nil {
		o[name] = q.text
	}
}

// document writes the job as people would.
func (j *modelJob) document() []byte {
	doc := object{"schema": 1, "tasks": each(j.tasks, (*modelTask).object)}
	if len(j.materials) > 0 {
		doc["materials"] = each(j.materials, (*modelMaterial).object)
	}
	if len(j.pots) > 0 {
		doc["containers"] = each(j.pots, (*modelPot).object)
	}
	if len(j.mixes) > 0 {
		doc["mixes"] = each(j.mixes, (*modelMix).object)
	}
	if len(j.offers) > 0 {
		doc["offers"] = each(j.offers, (*modelOffer).object)
	}
	hand := object{}
	for id, v := range j.onHand {
		hand.put(id, &v)
	}
	if len(hand) > 0 {
		doc["on_hand"] = hand
	}
	data, err := json.Marshal(doc)
	if err != nil {
		panic(err)
	}
	return data
}

func each[T any, R any](list []T, write func(*T) R) (out []R) {
	for i := range list {
		out = append(out, write(&list[i]))
	}
	return out
}

func (m *modelMaterial) object() object {
	o := object{"id": m.id, "name": "My " + m.id}
	o.put("settle", m.settle)
	return o
}

func (p *modelPot) object() object {
	o := object{"id": p.id}
	if p.cells > 0 {
		o["cells"] = p.cells
	}
	o.put("holds", p.holds)
	o.put("low", p.low)
	o.put("high", p.high)
	return o
}

func (m *modelMix) object() object {
	parts := object{}
	for _, p := range m.parts {
		parts[p.of] = p.amount.text
		if _, err := strconv.ParseFloat(p.amount.text, 64); err == nil {
			parts[p.of] = json.Number(p.amount.text)
		}
	}
	o := object{"id": m.id, "parts": parts}
	o.put("blend_loss", m.blend)
	o.put("settle", m.settle)
	return o
}

func (f *modelOffer) object() object {
	o := object{"material": f.material}
	if f.bulk {
		o.put("bulk", f.size)
	} else {
		o.put("pack", f.size)
	}
	o.put("opens_to", f.opens)
	if f.cents != nil {
		o["price"] = big.NewRat(*f.cents, 100).FloatString(2)
	}
	return o
}

func (t *modelTask) object() object {
	o := object{"kind": t.kind}
	if t.isMix {
		o["mix"] = t.filling
	} else if t.filling != "" {
		o["material"] = t.filling
	}
	o.put("settle", t.settle)
	o.put("blend_loss", t.blend)
	o.put("spare", t.spare)
	o.put("layer", t.layer)
	o.put("share", t.share)
	o.put("into", t.into)
	o.put("over", t.over)
	switch t.kind {
	case "fill":
		o["containers"] = each(t.lines, (*modelLine).object)
	case "backfill":
		t.hole(o)
	default:
		o["area"] = t.ground.document()
	}
	if t.stems > 0 {
		o["stems"] = object{"count": t.stems, "clear": t.clear.text}
	}
	return o
}

func (t *modelTask) hole(o object) {
	o["holes"] = t.holes
	o.put("width", &t.width)
	o.put("depth", &t.depth)
	o["ball"] = t.ball.String()
	o.put("above_grade", t.above)
	if t.soil != "" {
		o["soil"] = t.soil
	}
}

func (b *modelBall) String() string {
	switch {
	case b.class != "":
		return b.class
	case b.volume != nil:
		return b.volume.text
	}
	return dims(b.across, b.height)
}

func dims(sides ...typed) string {
	return strings.Join(each(sides, func(s *typed) string { return s.text }), " x ")
}

func (l *modelLine) object() object {
	o := object{"count": l.count}
	switch l.form {
	case "size":
		o["size"] = l.class
	case "holds":
		o.put("holds", &l.sides[0])
	case "brim":
		o.put("brim", &l.sides[0])
		if len(l.sides) > 1 && l.tapers {
			o.put("top", &l.sides[1])
		} else if len(l.sides) > 1 {
			o.put("across", &l.sides[1])
		}
	case "box":
		o["box"] = dims(l.sides...)
	case "straight":
		o.put("across", &l.sides[0])
		o.put("height", &l.sides[1])
	default:
		o.put("top", &l.sides[0])
		o.put("bottom", &l.sides[1])
		o.put("height", &l.sides[2])
	}
	if l.square {
		o["shape"] = "square"
	}
	if l.cells > 0 {
		o["cells"] = l.cells
	}
	o.put("below_rim", l.belowRim)
	if l.ball != nil {
		o["ball"] = l.ball.String()
	}
	return o
}
