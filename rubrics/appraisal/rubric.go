package appraisal

// Rubric is what to look at for one kind of equipment. It is written as YAML
// (one file a kind) and read strictly; this package only judges by it.
type Rubric struct {
	ID      string `json:"id" yaml:"id" validate:"required,slug"`
	Version int    `json:"version" yaml:"version" validate:"gte=1"`
	Kind    string `json:"kind" yaml:"kind" validate:"required,max=60" say:"yes"`
	// Words a listing may have for the kind, besides its name.
	Words []string `json:"words,omitempty" yaml:"words" validate:"max=20,dive,required,max=40"`
	About string   `json:"about" yaml:"about" validate:"required,max=1200" say:"yes"`
	// Cautions are said before the walkaround begins.
	Cautions []string `json:"cautions" yaml:"cautions" validate:"min=1,dive,required,max=400" say:"yes"`
	Capacity Capacity `json:"capacity" yaml:"capacity"`
	// Life is the normal useful life in years, sound and maintained; a judgement.
	Life         Years        `json:"life" yaml:"life"`
	Depreciation Depreciation `json:"depreciation" yaml:"depreciation"`
	Scrap        Scrap        `json:"scrap" yaml:"scrap"`
	Care         Care         `json:"care" yaml:"care"`
	// Body is the usual size of the kind, Needs what it asks of a shop, Visit what
	// to settle before the drive.
	Body  *Body  `json:"body,omitempty" yaml:"body"`
	Needs *Needs `json:"needs,omitempty" yaml:"needs"`
	Visit *Visit `json:"visit,omitempty" yaml:"visit"`
	// Facts decide which checks apply.
	Facts        []Fact        `json:"facts,omitempty" yaml:"facts" validate:"dive"`
	Landing      []Landing     `json:"landing" yaml:"landing" validate:"min=1,dive"`
	Preparations []Preparation `json:"preparations" yaml:"preparations" validate:"dive"`
	Remedies     []Remedy      `json:"remedies" yaml:"remedies" validate:"min=1,dive"`
	Sections     []Section     `json:"sections" yaml:"sections" validate:"min=1,dive"`
}

// Capacity names the size by which prices of this kind scale.
type Capacity struct {
	Title string `json:"title" yaml:"title" validate:"required,max=60" say:"yes"`
	Unit  string `json:"unit" yaml:"unit" validate:"required,max=12"`
	// Other units a size may be entered in; they convert to Unit.
	Other []string `json:"other,omitempty" yaml:"other" validate:"max=6,dive,required,max=12"`
	// Exponent of the cost-to-capacity rule, 0.5 to 0.9, about 0.6 on average.
	Exponent float64 `json:"exponent" yaml:"exponent" validate:"gte=0.3,lte=1.2"`
}

// Years is a three-point age.
type Years struct {
	Low    float64 `json:"low" yaml:"low" validate:"gt=0,lte=100"`
	Likely float64 `json:"likely" yaml:"likely" validate:"gtefield=Low"`
	High   float64 `json:"high" yaml:"high" validate:"gtefield=Likely,lte=100"`
}

// Scrap is what is left when the thing cannot be put right: material value, and
// the cost of getting rid of it.
type Scrap struct {
	Value Range `json:"value" yaml:"value"`
	Haul  Range `json:"haul" yaml:"haul"`
}

// Care holds the judgement of how such equipment is kept. Classes, in order:
// well kept, ordinary, neglected.
type Care struct {
	// Prior by kind of seller; each row sums to 1. Needs the key "private".
	Prior map[string][3]float64 `json:"prior" yaml:"prior" validate:"required,dive,keys,oneof=private dealer auction closing,endkeys"`
	// Bad is the probability that a check would be found bad or failed, by class,
	// where the check states none of its own.
	Bad [3]float64 `json:"bad" yaml:"bad" validate:"dive,gt=0,lt=1"`
	// Failed is the share of the bad points that have failed outright.
	Failed float64 `json:"failed" yaml:"failed" validate:"gt=0,lt=1"`
	// Older tilts the prior for equipment past an age.
	Older *Older `json:"older,omitempty" yaml:"older"`
}

// Older multiplies the prior of each class for equipment older than After years.
type Older struct {
	After float64    `json:"after" yaml:"after" validate:"gt=0,lte=100"`
	Odds  [3]float64 `json:"odds" yaml:"odds" validate:"dive,gt=0,lte=20"`
}

// Depreciation ties a kind to published curves. Where none is published for it,
// Class is empty, and the class for miscellaneous machines is used, widened.
type Depreciation struct {
	Class string `json:"class,omitempty" yaml:"class" validate:"max=40"`
	// Survivor is the Iowa type of the kind's retirements, S0 to S4.
	Survivor string `json:"survivor" yaml:"survivor" validate:"oneof=S0 S1 S2 S3 S4"`
	// Inutility is the exponent by which idle capacity takes worth.
	Inutility float64 `json:"inutility" yaml:"inutility" validate:"gte=0.3,lte=1.2"`
}

// Fact is asked once, first.
type Fact struct {
	ID      string   `json:"id" yaml:"id" validate:"required,slug"`
	Ask     string   `json:"ask" yaml:"ask" validate:"required,max=200" say:"yes"`
	Options []Option `json:"options" yaml:"options" validate:"min=2,dive"`
}

// Option is one answer to a fact.
type Option struct {
	ID    string `json:"id" yaml:"id" validate:"required,slug"`
	Title string `json:"title" yaml:"title" validate:"required,max=80" say:"yes"`
	// Words a listing may have for it. Where a word could mean anything else, leave it out.
	Words []string `json:"words,omitempty" yaml:"words" validate:"max=20,dive,required,max=40"`
}

// Landing is one cost between the handshake and a connected machine.
type Landing struct {
	ID    string `json:"id" yaml:"id" validate:"required,slug"`
	Title string `json:"title" yaml:"title" validate:"required,max=120" say:"yes"`
	Cost  Range  `json:"cost" yaml:"cost"`
	// PerDistance is the cost of one mile (or kilometre) of the round trip.
	PerDistance Money `json:"per_distance,omitempty" yaml:"per_distance" validate:"gte=0,lte=100000000000"`
	// Hours of work and whose: own, or a trade of the settings.
	Hours Hours  `json:"hours" yaml:"hours"`
	Rate  string `json:"rate,omitempty" yaml:"rate" validate:"omitempty,oneof=own machine electrician rigger welder specialist inspector"`
	// Stays marks work that remains in the building and so counts towards worth in place.
	Stays bool `json:"stays,omitempty" yaml:"stays"`
	// Fit names the point of the shop's fit that decides about this line: it counts
	// where that point fits with work, and not where it fits as it is.
	Fit string `json:"fit,omitempty" yaml:"fit" validate:"omitempty,oneof=ceiling door slab floor circuit converter transformer air"`
	// Assumed tells that the line counts while its point of fit is not known.
	Assumed bool `json:"assumed,omitempty" yaml:"assumed"`
	// Haul names what the plan for getting it home computes in place of this cost.
	Haul string `json:"haul,omitempty" yaml:"haul" validate:"omitempty,oneof=transport loading tie-downs"`
	// When counts the line only for these options: fact id to option ids.
	When map[string][]string `json:"when,omitempty" yaml:"when"`
}

// Preparation is work needed once however many remedies need it.
type Preparation struct {
	ID    string    `json:"id" yaml:"id" validate:"required,slug"`
	Title string    `json:"title" yaml:"title" validate:"required,max=120" say:"yes"`
	Parts []PartUse `json:"parts,omitempty" yaml:"parts" validate:"dive"`
	Hours Hours     `json:"hours" yaml:"hours"`
	Rate  string    `json:"rate" yaml:"rate" validate:"oneof=own machine electrician rigger welder specialist inspector"`
	// Needs lists preparations that must come before this one.
	Needs   []string `json:"needs,omitempty" yaml:"needs"`
	Caution string   `json:"caution,omitempty" yaml:"caution" validate:"max=400" say:"yes"`
}

// PartUse is a part of the price book and how many.
type PartUse struct {
	Part     string  `json:"part" yaml:"part" validate:"required,slug"`
	Quantity float64 `json:"quantity" yaml:"quantity" validate:"gt=0,lte=1000"`
}

// Remedy is how a finding is put right. The reserved id "scrap" has no remedy:
// the thing is passed over, or bought for its material.
type Remedy struct {
	ID    string `json:"id" yaml:"id" validate:"required,slug,ne=scrap"`
	Title string `json:"title" yaml:"title" validate:"required,max=120" say:"yes"`
	// Ways in the order a careful owner would prefer them; the first is the default.
	Ways []Way `json:"ways" yaml:"ways" validate:"min=1,dive"`
}

// Way is one way of carrying out a remedy.
type Way struct {
	ID    string    `json:"id" yaml:"id" validate:"required,slug"`
	Kind  string    `json:"kind" yaml:"kind" validate:"oneof=buy make hire"`
	Title string    `json:"title" yaml:"title" validate:"required,max=160" say:"yes"`
	Parts []PartUse `json:"parts,omitempty" yaml:"parts" validate:"dive"`
	Hours Hours     `json:"hours" yaml:"hours"`
	Rate  string    `json:"rate" yaml:"rate" validate:"oneof=own machine electrician rigger welder specialist inspector"`
	// Make costs a shop-made part; only for kind make.
	Make         *Make    `json:"make,omitempty" yaml:"make" validate:"required_if=Kind make"`
	Preparations []string `json:"preparations,omitempty" yaml:"preparations"`
	Caution      string   `json:"caution,omitempty" yaml:"caution" validate:"max=400" say:"yes"`
}

// Make is the machining of one shop-made part at the own machine rate.
type Make struct {
	// Setup and Load are minutes; Spread is the relative uncertainty of the time.
	Setup  float64 `json:"setup" yaml:"setup" validate:"gte=0,lte=600"`
	Load   float64 `json:"load" yaml:"load" validate:"gte=0,lte=600"`
	Finish float64 `json:"finish" yaml:"finish" validate:"gte=0,lte=600"`
	Pieces int     `json:"pieces" yaml:"pieces" validate:"gte=1,lte=1000"`
	Cuts   []Cut   `json:"cuts" yaml:"cuts" validate:"min=1,dive"`
	Spread float64 `json:"spread" yaml:"spread" validate:"gte=0,lte=1"`
}

// Cut is one machining operation in inch units: t = passes * L / (N f),
// N = 12 V / (pi D).
type Cut struct {
	Title    string  `json:"title" yaml:"title" validate:"required,max=80" say:"yes"`
	Diameter float64 `json:"diameter" yaml:"diameter" validate:"gt=0,lte=100"` // in
	Length   float64 `json:"length" yaml:"length" validate:"gt=0,lte=1000"`    // in
	Speed    float64 `json:"speed" yaml:"speed" validate:"gt=0,lte=3000"`      // ft/min
	Feed     float64 `json:"feed" yaml:"feed" validate:"gt=0,lte=1"`           // in/rev
	Passes   int     `json:"passes" yaml:"passes" validate:"gte=1,lte=500"`
}

// Section is a stage of the walkaround; sections stand in safe order.
type Section struct {
	ID    string `json:"id" yaml:"id" validate:"required,slug"`
	Title string `json:"title" yaml:"title" validate:"required,max=80" say:"yes"`
	// State the equipment must be in: documents before touching, power off,
	// running unloaded, loaded last.
	State   string  `json:"state" yaml:"state" validate:"oneof=documents power-off unloaded loaded"`
	Caution string  `json:"caution,omitempty" yaml:"caution" validate:"max=400" say:"yes"`
	Checks  []Check `json:"checks" yaml:"checks" validate:"min=1,dive"`
}

// Check is one thing to look at, measure, run or read.
type Check struct {
	ID     string `json:"id" yaml:"id" validate:"required,slug"`
	Title  string `json:"title" yaml:"title" validate:"required,max=80" say:"yes"`
	Kind   string `json:"kind" yaml:"kind" validate:"oneof=look measure run read"`
	Hazard string `json:"hazard" yaml:"hazard" validate:"oneof=danger warning caution notice"`
	Weight Weight `json:"weight" yaml:"weight"`
	// Minutes it takes a careful person.
	Minutes    float64  `json:"minutes" yaml:"minutes" validate:"gt=0,lte=120"`
	Instrument []string `json:"instrument,omitempty" yaml:"instrument" validate:"dive,required,max=60" say:"yes"`
	How        string   `json:"how" yaml:"how" validate:"required,max=900" say:"yes"`
	Caution    string   `json:"caution,omitempty" yaml:"caution" validate:"required_if=Hazard danger,max=400" say:"yes"`
	Grades     Grades   `json:"grades" yaml:"grades"`
	// Remedies by grade word; a missing word means nothing to put right.
	Remedies Remedies `json:"remedies" yaml:"remedies"`
	Limit    *Limit   `json:"limit,omitempty" yaml:"limit"`
	// When shows the check only for these options: fact id to option ids.
	When map[string][]string `json:"when,omitempty" yaml:"when"`
	// Bad overrides the rubric's care.bad for this check.
	Bad *[3]float64 `json:"bad,omitempty" yaml:"bad" validate:"omitempty,dive,gt=0,lt=1"`
}

// Weight counts a check towards the two scores, which never mix.
type Weight struct {
	Safety    int `json:"safety" yaml:"safety" validate:"gte=0,lte=100"`
	Condition int `json:"condition" yaml:"condition" validate:"gte=0,lte=100"`
}

// Grades says what each grade looks like; an empty text is not offered.
type Grades struct {
	AsNew  string `json:"as_new,omitempty" yaml:"as_new" validate:"max=300" say:"yes"`
	Sound  string `json:"sound" yaml:"sound" validate:"required,max=300" say:"yes"`
	Worn   string `json:"worn,omitempty" yaml:"worn" validate:"max=300" say:"yes"`
	Bad    string `json:"bad,omitempty" yaml:"bad" validate:"max=300" say:"yes"`
	Failed string `json:"failed" yaml:"failed" validate:"required,max=300" say:"yes"`
}

// Remedies names a remedy per grade, or "scrap".
type Remedies struct {
	Worn   string `json:"worn,omitempty" yaml:"worn"`
	Bad    string `json:"bad,omitempty" yaml:"bad"`
	Failed string `json:"failed,omitempty" yaml:"failed"`
}

// Limit ties a check to a measured limit of package limit.
type Limit struct {
	Name string `json:"name" yaml:"name" validate:"required,slug"`
	// Ask lists the quantities the inspector enters, in order.
	Ask []string `json:"ask" yaml:"ask" validate:"min=1"`
	// Fixed quantities, written as text with units ("3 in", "running").
	Fixed map[string]string `json:"fixed,omitempty" yaml:"fixed"`
	// The grade word each result proposes; the inspector may grade lower, never
	// higher than beyond.
	Within string `json:"within" yaml:"within" validate:"oneof=as_new sound worn bad failed"`
	Watch  string `json:"watch" yaml:"watch" validate:"oneof=as_new sound worn bad failed"`
	Beyond string `json:"beyond" yaml:"beyond" validate:"oneof=as_new sound worn bad failed"`
}

// Part is one entry of the price book; prices of the file are examples.
type Part struct {
	ID    string `json:"id" yaml:"id" validate:"required,slug"`
	Title string `json:"title" yaml:"title" validate:"required,max=120" say:"yes"`
	Unit  string `json:"unit" yaml:"unit" validate:"required,max=20" say:"yes"`
	Price Range  `json:"price" yaml:"price"`
}
