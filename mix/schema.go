package mix

// Object is one kind of object of the job document, for a help text.
type Object struct {
	Name   string // "a fill task"
	Fields []Field
}

// Field is one field of an object: what to write there, and what it is.
type Field struct{ Name, Takes, About string }

// Fields lists every object and field of the job document, from the tables
// that read it.
func Fields() []Object {
	return []Object{
		object("the job", jobFields),
		object("a task, of any kind", taskFields),
		object("a fill task", fillFields),
		object("a container line of a fill task", containerFields),
		object("an amend task", amendFields),
		object("a backfill task", backfillFields),
		object("a cover task", coverFields),
		object("stems", stemFields),
		object("a sheet", sheetFields),
		object("an area, when it is an object", areaFields()),
		object("a strip", stripFields),
		object("a ring", ringFields),
		object("an offer", offerFields),
		object("a price break of an offer", breakFields),
		object("haul", haulFields),
		object("delivery", deliveryFields),
		object("yard", yardFields),
		object("what is bought", boughtFields),
		object("a mix of your own", mixFields),
		object("a material of your own", materialFields),
		object("a container of your own", classFields),
	}
}

func object[T any](name string, fields []field[T]) Object {
	o := Object{Name: name}
	for _, f := range fields {
		o.Fields = append(o.Fields, Field{f.name, f.takes, f.about})
	}
	return o
}
