package report

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
)

// Shape returns what the document with that name may have: "Plan", "FullPlan",
// "Problems", "Changes" or "Reach". It returns nil for any other name. Tests check
// every document against its shape.
func Shape(name string) *json.Shape {
	switch name {
	case "Plan":
		return planShape()
	case "FullPlan":
		return fullShape()
	case "Problems":
		return problemsShape()
	case "Changes":
		return changesShape()
	case "Reach":
		return reachShape()
	}
	return nil
}

// Shapes are the names that [Shape] takes. It is read-only. The shapes themselves are
// functions: the page never calls them, so they are left out of its program, while the
// values of variables could not be.
var Shapes = []string{"Plan", "FullPlan", "Problems", "Changes", "Reach"}

// must is a field that is always there.
func must(name string, shape *json.Shape, about string) json.Member {
	return json.Member{Name: name, Shape: shape, About: about}
}

// may is a field that may be left out.
func may(name string, shape *json.Shape, about string) json.Member {
	return json.Member{Name: name, Shape: shape, About: about, Maybe: true}
}

// shown is the field beside an amount or a size that is text for programs. It is there
// only where people of the reader's language write that text in another way.
func shown(name string) json.Member {
	return may(name+"_shown", json.AString, "the same as the reader writes it, where that differs")
}

// extend adds to a shape the fields of others.
func extend(s *json.Shape, others ...*json.Shape) *json.Shape {
	s.Extends = others
	return s
}

// money is what a field of an amount holds: text such as "4.75", in every language.
const money = "an amount of money, with a point"

func soldShape() *json.Shape {
	return json.AnObject("Sold", "What an offer is sold in, as it was typed: one of the two.",
		may("pack", json.AString, "a bag or a bale"), shown("pack"),
		may("bulk", json.AString, "a step of loose material"), shown("bulk"))
}

func weighedShape() *json.Shape {
	return json.AnObject("Weighed", "What something weighs, where that is known.",
		may("mass_kg", json.ARange, "lightest and heaviest, in kilograms"),
		may("mass_shown", json.AString, "the same as text"))
}

func packShape() *json.Shape {
	return extend(json.AnObject("Pack", "A common pack that a need may be bought in.",
		may("bale", json.AString, "a compressed bale, in place of pack and bulk"), shown("bale"),
		must("count", json.AnInt, "how many cover the need"),
		may("count_range", json.ARange, "the fewest and the most, where they differ"),
		must("left_litres", json.ANumber, "over the need"),
		must("left_shown", json.AString, "the same as text")), soldShape())
}

func needShape() *json.Shape {
	return extend(json.AnObject("Need", "One material over all tasks, less what is on hand.",
		must("material", json.AString, "the material's id"),
		must("name", json.AString, "what people call it"),
		may("grade", json.AString, "what to ask for"),
		must("litres", json.ANumber, "what to buy, loose, as planned"),
		may("range_litres", json.ARange, "the least and the most, where they differ"),
		must("shown", json.AString, "what to buy as yards say it"),
		may("range_shown", json.AString, "the range as text"),
		must("cu_ft", json.ANumber, "what to buy in cubic feet"),
		must("cu_yd", json.ANumber, "what to buy in cubic yards"),
		must("takes_litres", json.ANumber, "what all tasks take"),
		may("on_hand_litres", json.ANumber, "what of that is there"),
		may("on_hand_shown", json.AString, "the same as text"),
		must("packs", json.ListOf(packShape()), "the need in every common pack")), weighedShape())
}

func lineShape() *json.Shape {
	return extend(json.AnObject("Line", "One line of the order, or an offer that it does not take.",
		must("material", json.AString, "the material's id"),
		must("offer", json.AnInt, "the offer's index in the job"),
		must("count", json.AnInt, "how many"),
		may("count_range", json.ARange, "the fewest and the most, of a line that covers its need alone"),
		must("litres", json.ANumber, "loose volume of all"),
		may("cost", json.AString, money+", before tax"), shown("cost"),
		may("delivered", json.AnInt, "of the count, what the yard brings"),
		may("stock", json.AnInt, "what the yard has, where that is less than the count"),
		may("left_litres", json.ANumber, "over the need, on the material's last line"),
		may("left_shown", json.AString, "the same as text")), soldShape(), weighedShape())
}

func tripPackShape() *json.Shape {
	return extend(json.AnObject("TripPack", "So many of one offer.",
		must("material", json.AString, "the material's id"),
		must("count", json.AnInt, "how many")), soldShape())
}

func tripShape() *json.Shape {
	return extend(json.AnObject("Trip", "A drive, or drives that are alike; a load that the yard brings.",
		must("packs", json.ListOf(tripPackShape()), "what it carries"),
		may("times", json.AnInt, "how often, where it is more than once"),
		must("litres", json.ANumber, "loose volume"),
		must("packed_litres", json.ANumber, "volume as it is carried"),
		must("packed_shown", json.AString, "the same as text"),
		may("limit", json.AWord("weight", "room"), "the limit that it is nearer to")), weighedShape())
}

func loadShape() *json.Shape {
	return extend(json.AnObject("Load", "The whole order, to be carried.",
		must("litres", json.ANumber, "loose volume"),
		must("packed_litres", json.ANumber, "volume as it is carried"),
		must("shown", json.AString, "the same as text"),
		may("drives", json.AnInt, "how many, at the heaviest"),
		may("drives_dry", json.AnInt, "how many, at the lightest"),
		may("drives_shown", json.AString, "the drives in words"),
		may("deliveries", json.AnInt, "loads that the yard brings")), weighedShape())
}

func leftOutShape() *json.Shape {
	return json.AnObject("LeftOut", "What the order lacks of a material: all of it, or what no stock covers.",
		must("material", json.AString, "the material's id"),
		must("name", json.AString, "what people call it"),
		must("litres", json.ANumber, "how much, loose"),
		must("shown", json.AString, "the same as text"),
		must("stand_ins", json.ListOf(json.AString), "what can stand in, in sentences"))
}

func allowanceShape() *json.Shape {
	return json.AnObject("Allowance", "One step from what stands in place to what is bought.",
		must("code", json.AWord(task.Settle, task.BlendLoss, task.Spare), "which, the same in every language"),
		must("name", json.AString, "which, in words"),
		must("share", json.AString, "how much of the volume"), shown("share"),
		may("low", json.AString, "the least that the share may be, where it is uncertain"), shown("low"),
		may("high", json.AString, "the most that the share may be, where it is uncertain"), shown("high"),
		must("adds_litres", json.ANumber, "what it adds"),
		must("adds_shown", json.AString, "the same as text"),
		must("source", json.AString, "where the share comes from"))
}

func partShape() *json.Shape {
	return json.AnObject("Part", "What a task takes of one material.",
		must("material", json.AString, "the material's id"),
		must("litres", json.ANumber, "loose, as planned"),
		may("range_litres", json.ARange, "the least and the most, where they differ"),
		must("shown", json.AString, "the same as text"))
}

func factShape() *json.Shape {
	return json.AnObject("Fact", "One more thing that a task works out.",
		must("code", json.AString, "what it is, the same in every language"),
		must("label", json.AString, "what it is, in words"),
		must("figure", json.AString, "the figure as text"))
}

func noteShape() *json.Shape {
	return json.AnObject("Note", "What is worth knowing.",
		may("task", json.AnInt, "the task's index"),
		may("path", json.AString, "the field that it is about"),
		must("code", json.AString, "what it is, the same in every language"),
		must("text", json.AString, "the sentence"))
}

func cautionShape() *json.Shape {
	return json.AnObject("Caution", "What to take care of.",
		must("code", json.AString, "what it is, the same in every language"),
		must("text", json.AString, "the sentence"),
		may("source", json.AString, "who says so"))
}

func stepShape() *json.Shape {
	return json.AnObject("Step", "A step of the working.",
		may("task", json.AnInt, "the task's index; left out for what is pooled over tasks"),
		may("material", json.AString, "the material's id"),
		must("step", json.AString, "what is done"),
		must("figure", json.AString, "what it comes to"),
		must("source", json.AString, "where the figures come from"))
}

// taskShape has the fields of every task and those of each kind. It asks the kinds, so
// that a new kind needs no change here.
func taskShape() *json.Shape {
	kinds := task.Kinds()
	names := make([]string, len(kinds))
	for i, k := range kinds {
		names[i] = k.Name
	}
	s := json.AnObject("Task", "One task of the job, worked out.",
		must("kind", json.AWord(names...), "what is done"),
		must("title", json.AString, "the task's name, or what is done in words"),
		may("filling", json.AString, "what goes in; left out for nothing"),
		must("net_litres", json.ANumber, "what goes in, in place"),
		may("net_range_litres", json.ARange, "the least and the most, where they differ"),
		must("net_shown", json.AString, "the same as text"),
		must("loose_litres", json.ANumber, "what goes in, as it leaves the shovel"),
		may("loose_range_litres", json.ARange, "the least and the most, where they differ"),
		must("loose_shown", json.AString, "the same as text"),
		may("allowances", json.ListOf(allowanceShape()), "from net to loose; left out where nothing goes in"),
		may("parts", json.ListOf(partShape()), "the loose volume by material"))
	for _, k := range kinds {
		if own := k.Result.Shape(); own != nil {
			s.Fields = append(s.Fields, *own)
		}
	}
	s.Fields = append(s.Fields, must("facts", json.ListOf(factShape()), "what else is worked out"))
	return s
}

// planShape lists the fields in the order in which [Plan] writes them.
func planShape() *json.Shape {
	batch := json.AnObject("Batch", "One mixing by the bucket; there are none yet.")
	return json.AnObject("Plan", "Everything that is worked out of a job.",
		must("schema", json.AnInt, "the version of this document"),
		may("name", json.AString, "the job's"),
		must("measure", json.AWord("us", "metric", "both"), "the units of its texts"),
		must("needs", json.ListOf(needShape()), "what to buy, by material"),
		must("order", json.ListOf(lineShape()), "what to buy, from the offers"),
		may("others", json.ListOf(lineShape()), "offers that are not taken, each as if it were bought alone; what the whole order costs with one is in alternatives"),
		must("trips", json.ListOf(tripShape()), "drives"),
		may("deliveries", json.ListOf(tripShape()), "loads that the yard brings"),
		must("batches", json.ListOf(batch), "empty: not worked out yet"),
		may("currency", json.AString, "the sign before amounts"),
		may("cost", json.AString, money+": the goods"), shown("cost"),
		may("tax", json.AString, money), shown("tax"),
		may("driving", json.AString, money), shown("driving"),
		may("delivery", json.AString, money), shown("delivery"),
		may("deposit", json.AString, money+": comes back, and is no part of the total"), shown("deposit"),
		may("total", json.AString, money+": still to pay"), shown("total"),
		may("bought", json.ListOf(lineShape()), "what was bought already, and is in no trip"),
		may("paid", json.AString, money+": for that at the yard, tax counted; drives made for it are not known"), shown("paid"),
		may("in_all", json.AString, money+": paid and still to pay"), shown("in_all"),
		may("none_below", json.AString, "no order costs less; left out where this one is the cheapest"),
		shown("none_below"),
		may("unpriced", json.ListOf(json.AString), "ordered materials without a price, by id"),
		may("left_out", json.ListOf(leftOutShape()), "materials to buy that no offer covers"),
		may("load", loadShape(), "the order, to be carried; left out where there is none"),
		must("tasks", json.ListOf(taskShape()), "the tasks, in the job's order"),
		must("notes", json.ListOf(noteShape()), "what is worth knowing"),
		must("cautions", json.ListOf(cautionShape()), "what to take care of"),
		must("working", json.ListOf(stepShape()), "every step behind the figures"))
}

// fullShape is a plan with the fields that [Full] adds.
func fullShape() *json.Shape {
	point := json.AnObject("CrossingPoint", "What a volume costs either way; left out where the stock is short of it.",
		must("litres", json.ANumber, "the volume, loose"),
		may("bags", json.AString, money), may("bulk", json.AString, money))
	less := func() *json.Shape { return json.AWord(yard.CheaperWords()...) }
	stretch := json.AnObject("Stretch", "Volumes for all of which the same costs less.",
		must("over_litres", json.ANumber, "every volume above this one"),
		must("up_to_litres", json.ANumber, "up to and including this one"),
		must("cheaper", less(), "what costs less; neither where neither covers it, unknown where it was not worked out"))
	crossing := json.AnObject("Crossing", "What a material costs in bags alone and in bulk alone, bought by itself.",
		must("material", json.AString, "the material's id"),
		must("text", json.AString, "the sentence"),
		must("need_litres", json.ANumber, "the need, loose"),
		may("bags", json.AString, money+", of the need in bags; left out where they do not cover it"), shown("bags"),
		may("bulk", json.AString, money+", of the need in bulk; left out where it does not cover it"), shown("bulk"),
		must("cheaper", less(), "what costs less for the need"),
		may("bulk_from_litres", json.ANumber, "above this volume bulk costs less for every volume that was looked at; left out where there is none"),
		must("looked_to_litres", json.ANumber, "the largest volume that was looked at"),
		must("stretches", json.ListOf(stretch), "what costs less, for every volume that was looked at"),
		must("points", json.ListOf(point), "cost against volume: both ends of every step that was looked at"))
	choice := json.AnObject("Choice", "An order that could be chosen; the first is the plan's.",
		may("total", json.AString, money), shown("total"),
		must("left_litres", json.ANumber, "over the needs"),
		must("left_shown", json.AString, "the same as text"),
		must("packs", json.AnInt, "lifted by hand"),
		must("trips", json.AnInt, "drives and loads"),
		must("order", json.ListOf(tripPackShape()), "what to buy"))
	alternative := extend(json.AnObject("Alternative", "The whole order with another offer in place of all that it buys of that material.",
		must("material", json.AString, "the material's id"),
		must("offer", json.AnInt, "the offer's index in the job"),
		must("count", json.AnInt, "how many"),
		must("total", json.AString, money+": of the whole order, tax, driving and delivery counted"), shown("total"),
		may("none_below", json.AString, "no such order costs less; left out where this one is the cheapest"), shown("none_below"),
		must("left_litres", json.ANumber, "over the need"),
		must("left_shown", json.AString, "the same as text"),
		must("trips", json.AnInt, "drives and loads of the whole order")), soldShape())
	matter := json.AnObject("Matter", "A figure that the need hangs on.",
		must("name", json.AString, "what it is"),
		must("moves_litres", json.ANumber, "the volume that hangs on it"),
		must("moves_shown", json.AString, "the same as text"),
		must("measure", json.AString, "what to measure about it"))
	sure := json.AnObject("Sure", "How sure the order is to be enough.",
		must("chance", json.ANumber, "from 0 to 1"),
		must("error", json.ANumber, "by which sampling may have it off"),
		must("shown", json.AString, "the chance in words"),
		must("method", json.AString, "how it is worked out"),
		must("assumes", json.ListOf(json.AString), "what is taken for granted of the packs"),
		must("ranges", json.ListOf(json.AString), "what is uncertain, in words"),
		may("enough", json.ListOf(tripPackShape()), "what is enough 9 times in 10; left out where the order is"),
		may("enough_total", json.AString, money), shown("enough_total"),
		may("enough_chance", json.ANumber, "the chance of that"),
		must("matters", json.ListOf(matter), "the figures that matter most"))
	return extend(json.AnObject("FullPlan", "A plan with what takes longer to work out.",
		must("bags_or_bulk", json.ListOf(crossing), "materials offered in both, with prices"),
		must("choices", json.ListOf(choice), "other orders"),
		may("alternatives", json.ListOf(alternative), "what the whole order costs with each of the others"),
		may("sure", sure, "left out where there is no order")), planShape())
}

func problemsShape() *json.Shape {
	return json.AnObject("Problems", "What is wrong with a job: the answer in place of a plan.",
		must("problems", json.ListOf(json.AnObject("Problem", "One thing wrong with a job.",
			must("path", json.AString, "the field, as the document nests it; empty for the whole"),
			must("code", json.AString, "what is wrong, the same in every language"),
			must("value", json.AString, "what was typed"),
			must("hint", json.AString, "what would do"))), "in the order of the document"))
}

func totalsShape() *json.Shape {
	return json.AnObject("Totals", "What there is to pay and to drive.",
		may("goods", json.AString, money), shown("goods"),
		may("total", json.AString, money+": still to pay"), shown("total"),
		may("driving", json.AString, money+": of the total, for the drives still to make"), shown("driving"),
		may("paid", json.AString, money+": for what was bought already, tax counted"), shown("paid"),
		may("in_all", json.AString, money+": paid and still to pay"), shown("in_all"),
		may("drives_shown", json.AString, "the drives still to make, in words"))
}

func changesShape() *json.Shape {
	change := extend(json.AnObject("Change", "What became of one offer.",
		must("material", json.AString, "the material's id"),
		must("name", json.AString, "what people call it"),
		must("before", json.AnInt, "how many before"),
		must("after", json.AnInt, "how many now"),
		must("is", json.AWord("same", "new", "gone", "more", "fewer"), "which of these"),
		may("bought", json.AnInt, "how many were bought in between; below zero where a purchase was taken back"),
		may("why", json.AWord("sold-out", "bought", "scarce", "not-needed"), "why fewer are to be bought; scarce: these are all there are"),
		may("price_before", json.AString, money+", where it is another now; left out where there was none"), shown("price_before"),
		may("price_after", json.AString, money+", where it was another; left out where there is none"), shown("price_after")), soldShape())
	return json.AnObject("Changes", "What became of the order between two plans of a job.",
		must("changes", json.ListOf(change), "offer by offer"),
		may("before", totalsShape(), "left out where there was no plan before"),
		must("after", totalsShape(), "now"))
}

func reachShape() *json.Shape {
	pot := json.AnObject("ReachPot", "How many of one container are filled, if nothing else is.",
		must("label", json.AString, "the container"),
		must("count", json.AnInt, "how many"),
		may("count_range", json.ARange, "the fewest and the most, where they differ"))
	stock := json.AnObject("ReachLeft", "What there is of one material.",
		must("material", json.AString, "the material's id"),
		must("litres", json.ANumber, "loose"))
	return json.AnObject("Reach", "How far a stock goes.",
		must("schema", json.AnInt, "the version of this document"),
		must("filling", json.AString, "the mix or the material"),
		must("loose_litres", json.ANumber, "as much as there is for"),
		must("net_litres", json.ANumber, "the same in place"),
		must("limit", json.AString, "the material that runs out first, by id"),
		must("left", json.ListOf(stock), "what is left of every material then"),
		may("unused", json.ListOf(stock), "the stock of materials that do not go in"),
		must("containers", json.ListOf(pot), "each line of containers"),
		may("area_m2", json.ANumber, "the ground of a layer"),
		may("depth_mm", json.ANumber, "how deep it lies over the whole of it"),
		must("one_more", json.ListOf(json.AnObject("OneMore", "What one more pack would add.",
			must("material", json.AString, "the material's id"),
			must("pack", json.AString, "the pack"), shown("pack"),
			must("adds_litres", json.ANumber, "of the mix"))), "one more pack of each material"))
}
