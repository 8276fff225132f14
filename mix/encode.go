package mix

import (
	"strconv"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// Encode writes a job as a document that [Decode] reads back as the same job. It
// leaves out fields with their zero value, and the language, which belongs to the
// reader. Quantities are written exactly: as they were typed where that is known, or
// else in metric units. A nil job is written as the zero Job.
//
// The error is [Problems], for a job that no document can hold, such as one with a
// name of two lines, two stocks of one material or a quantity of more than 18 digits.
// Encode finds them by reading back what it wrote, so that the checks of Decode are
// not repeated.
//
// Do not encode the job that [Job.At] returns: what is sold out is no longer in it.
// Encode the job that was given to At, with its Yard.
func Encode(j *Job) ([]byte, error) {
	if j == nil {
		j = &Job{}
	}
	e := doc.Encoder{Other: encodeOther}
	e.Object(doc.Into{Table: jobFields, Object: &document{Job: *j, schema: schema}})
	data := e.JSON.Bytes()
	if _, err := Decode(data); err != nil {
		return nil, err
	}
	return data, nil
}

// encodeOther writes the types that package doc does not know. It returns false, with
// nothing written, for an empty value and for any other type.
func encodeOther(e *doc.Encoder, key func(), at any) bool {
	text := func(s string) bool {
		if s == "" {
			return false
		}
		key()
		e.JSON.String(s)
		return true
	}
	switch v := at.(type) {
	case *units.Measure:
		return *v != units.US && text(v.String())
	case *yard.Aim:
		return *v != yard.LeastCost && text(v.String())
	case *catalog.Size:
		return v.Volume != 0 && text(v.Document())
	case *[]catalog.Size:
		return encodeList(e, key, len(*v), func(i int) { e.JSON.String((*v)[i].Document()) })
	case *catalog.Source:
		return text(string(v.Text))
	case *[]catalog.Part:
		return encodeParts(e, key, *v)
	case *[]yard.OnHand:
		return encodeStock(e, key, *v)
	case **task.Ball:
		return *v != nil && text((*v).Document())
	case *[]task.Task:
		return encodeList(e, key, len(*v), func(i int) { encodeTask(e, &(*v)[i]) })
	case *ground.Area:
		return encodeArea(e, key, v)
	}
	return false
}

// encodeList writes a list of n elements, each with one.
func encodeList(e *doc.Encoder, key func(), n int, one func(i int)) bool {
	if n == 0 {
		return false
	}
	key()
	e.JSON.BeginArray()
	for i := range n {
		one(i)
	}
	e.JSON.EndArray()
	return true
}

// encodeParts writes the parts of a mix as {"peat": 2, "perlite": "1/2"}. A fraction
// is text, since a JSON number could not hold a third.
func encodeParts(e *doc.Encoder, key func(), parts []catalog.Part) bool {
	if len(parts) == 0 {
		return false
	}
	key()
	e.JSON.BeginObject()
	for _, p := range parts {
		e.JSON.Key(p.Of)
		if p.Den == 1 {
			e.JSON.Int(p.Num)
		} else {
			e.JSON.String(strconv.FormatInt(p.Num, 10) + "/" + strconv.FormatInt(p.Den, 10))
		}
	}
	e.JSON.EndObject()
	return true
}

// encodeStock writes what is on hand as {"peat": "7 cu ft"}.
func encodeStock(e *doc.Encoder, key func(), hand []yard.OnHand) bool {
	if len(hand) == 0 {
		return false
	}
	key()
	e.JSON.BeginObject()
	for i := range hand {
		e.JSON.Key(hand[i].Material)
		e.JSON.String(hand[i].Document())
	}
	e.JSON.EndObject()
	return true
}

// encodeTask writes a task: its kind, then the fields of every task, then those of
// its kind.
func encodeTask(e *doc.Encoder, t *task.Task) {
	e.JSON.BeginObject()
	kind := t.Kind()
	if kind != nil {
		e.JSON.Key("kind")
		e.JSON.String(kind.Name)
	}
	e.Fields(doc.Into{Table: task.Object.Tables[0], Object: t})
	if kind != nil {
		e.Fields(doc.Into{Table: kind.Object.Tables[0], Object: t.Work})
	}
	e.JSON.EndObject()
}

// encodeArea writes an area as it was typed where that still says what the area is, or
// else as an object.
func encodeArea(e *doc.Encoder, key func(), a *ground.Area) bool {
	if a.Shape == "" {
		return false
	}
	key()
	if a.Typed() {
		e.JSON.String(a.Text)
	} else {
		a.Encode(e)
	}
	return true
}
