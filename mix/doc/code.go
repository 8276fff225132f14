package doc

// The codes of a [Problem], besides those of packages units and json. Programs
// compare them, so a code never changes; the wording of a hint may.
const (
	FieldMissing = "field.missing" // a field that is needed is left out
	FieldUnknown = "field.unknown" // the object takes no such field
	FieldBoth    = "field.both"    // two fields where only one may be given
	FieldAlone   = "field.alone"   // a field without the one it goes with
	WordUnknown  = "word.unknown"  // none of the words that the field takes
	JSONKind     = "json.kind"     // text, a number, a list or an object where another is needed

	CountWhole    = "count.whole"    // a count with a point or an exponent
	CountSmall    = "count.small"    // a count below the field's minimum
	CountLarge    = "count.large"    // a count above [MaxCount]
	ShareRange    = "share.range"    // a share above the field's maximum
	QuantitySmall = "quantity.small" // a pack too small to count in
	RangeOrder    = "range.order"    // a low figure above the planned one, or a high figure below it

	NameLong    = "name.long"    // a name or a sign with too many letters
	NameControl = "name.control" // a name with characters that move a cursor
	IDForm      = "id.form"      // an id with characters that no id has, or with digits alone
	IDDuplicate = "id.duplicate" // an id twice in one list
	IDTaken     = "id.taken"     // the same id for a material and a mix

	MaterialUnknown  = "material.unknown"  // no such material
	MixUnknown       = "mix.unknown"       // no such mix
	ContainerUnknown = "container.unknown" // no such class of containers
	OfferUnknown     = "offer.unknown"     // no offer has that material and pack
	SourceUnknown    = "source.unknown"    // a row of the catalogue names a source that is not listed

	MixForm      = "mix.form"      // a mix that is not written as parts
	MixEmpty     = "mix.empty"     // a mix with no parts
	MixItself    = "mix.itself"    // a mix that contains itself, directly or through others
	MixParts     = "mix.parts"     // parts too large or too fine to share out exactly
	MixLarge     = "mix.large"     // a mix with too many parts
	DensityOrder = "density.order" // a wet weight below the dry one

	AreaMissing  = "area.missing"  // an area without a shape
	AreaSides    = "area.sides"    // more or fewer lengths than the shape takes
	AreaSmall    = "area.small"    // less ground than can be measured
	AreaLarge    = "area.large"    // more ground than can be worked out
	AreaLess     = "area.less"     // what is taken away is the whole area or more
	AreaRing     = "area.ring"     // an inner diameter not below the outer
	AreaTriangle = "area.triangle" // three sides that do not close
	AreaCorner   = "area.corner"   // a corner that is not two lengths
	AreaCorners  = "area.corners"  // too few corners, or too many
	AreaCrossing = "area.crossing" // an outline that crosses or touches itself
	AreaFar      = "area.far"      // a corner too far from the origin
	AreaGaps     = "area.gaps"     // a strip with gaps as long as itself
	AreaStrip    = "area.strip"    // a strip that its corners take up completely

	ContainerMissing  = "container.missing"   // a container without a size or a measure
	ContainerBelowRim = "container.below_rim" // a fill line at the base or below it
	BallLarge         = "ball.large"          // a root ball that does not fit
	BallAbove         = "ball.above"          // a root ball that stands wholly above the ground
	LayerSmall        = "layer.small"         // a layer too thin to measure
	LayerDeep         = "layer.deep"          // a layer deeper than the depth that it ends in
	SheetOverlap      = "sheet.overlap"       // an overlap as wide as the sheet
	SheetSmall        = "sheet.small"         // sheets too small to count
	StemsLarge        = "stems.large"         // the ground kept bare round stems is the whole bed

	OfferHeavy = "offer.heavy" // one of an offer weighs more than the vehicle carries
	OfferLarge = "offer.large" // one of an offer takes more room than the vehicle has
	OfferLeast = "offer.least" // a minimum to buy above the stock
	OfferOpens = "offer.opens" // a pack that opens to less than itself
	BreakOrder = "break.order" // price breaks that do not go up
	StockShort = "stock.short" // all offers of a material do not cover its need
	HaulFull   = "haul.full"   // the people weigh as much as the placard allows

	JobEmpty     = "job.empty"     // a job without tasks
	JobLarge     = "job.large"     // a list with too many rows, or tasks with too many parts
	VolumeSmall  = "volume.small"  // a container or a hole that holds nothing to measure
	VolumeLarge  = "volume.large"  // a volume too large to work out
	WeightLarge  = "weight.large"  // a weight too large to work out
	CostLarge    = "cost.large"    // a cost too large to work out
	OrderLarge   = "order.large"   // a whole order too large to work out
	SchemaNewer  = "schema.newer"  // a document of a later version
	ProblemsMore = "problems.more" // more problems than one report lists
)
