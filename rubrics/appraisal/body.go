package appraisal

// Body is the usual size of a kind of equipment: common practice, used until
// the listing's own figures are told.
type Body struct {
	Weight Span `json:"weight" yaml:"weight"` // lb, the whole machine
	Length Span `json:"length" yaml:"length"` // in, as it stands at work
	Width  Span `json:"width" yaml:"width"`   // in
	Height Span `json:"height" yaml:"height"` // in
	// Power of the main motor, hp; 0 where the kind has none.
	Power  Span    `json:"power" yaml:"power"`
	Pieces []Piece `json:"pieces" yaml:"pieces" validate:"min=1,dive"`
}

// Span is a three-point figure in the unit its field names.
type Span struct {
	Low    float64 `json:"low" yaml:"low" validate:"gte=0"`
	Likely float64 `json:"likely" yaml:"likely" validate:"gtefield=Low"`
	High   float64 `json:"high" yaml:"high" validate:"gtefield=Likely,lte=1000000"`
}

// Piece is what is moved as one.
type Piece struct {
	ID    string `json:"id" yaml:"id" validate:"required,slug"`
	Title string `json:"title" yaml:"title" validate:"required,max=80" say:"yes"`
	Count int    `json:"count" yaml:"count" validate:"gte=1,lte=20"`
	// Share of the whole weight that one of them has, 0 to 1.
	Share float64 `json:"share" yaml:"share" validate:"gt=0,lte=1"`
	// Length, Width and Height as it is moved, in.
	Length float64 `json:"length" yaml:"length" validate:"gt=0,lte=1000"`
	Width  float64 `json:"width" yaml:"width" validate:"gt=0,lte=1000"`
	Height float64 `json:"height" yaml:"height" validate:"gt=0,lte=1000"`
	// TopHeavy pieces fall over: their weight sits high.
	TopHeavy bool `json:"top_heavy,omitempty" yaml:"top_heavy"`
	// Handling says how it is stripped, lifted, set down and lashed.
	Handling string              `json:"handling" yaml:"handling" validate:"required,max=500" say:"yes"`
	When     map[string][]string `json:"when,omitempty" yaml:"when"`
}

// Needs is what a kind asks of a shop; a part that is absent is not asked.
type Needs struct {
	Slab *SlabNeed `json:"slab,omitempty" yaml:"slab"`
	// Rise is the highest lift of a vehicle, in: with it the ceiling must clear
	// vehicle and rise. 0 asks for the body's height alone.
	Rise float64 `json:"rise,omitempty" yaml:"rise" validate:"gte=0,lte=200"`
	// Arms carry the vehicle, each with an equal part of the rated load; 0 for none.
	Arms int      `json:"arms,omitempty" yaml:"arms" validate:"gte=0,lte=8"`
	Air  *AirNeed `json:"air,omitempty" yaml:"air"`
	// Clear is the room to work around it, in, on every side.
	Clear float64 `json:"clear" yaml:"clear" validate:"gte=0,lte=240"`
	// Start says how hard its motor starts, for the size of a converter.
	Start string `json:"start,omitempty" yaml:"start" validate:"omitempty,oneof=easy normal hard"`
	// Pads are the feet that carry the weight, and the area of one, in2.
	Pads    int     `json:"pads,omitempty" yaml:"pads" validate:"gte=0,lte=20"`
	PadArea float64 `json:"pad_area,omitempty" yaml:"pad_area" validate:"gte=0,lte=10000"`
}

// SlabNeed is the concrete the kind usually asks for; the maker's manual overrides it.
type SlabNeed struct {
	Thickness float64 `json:"thickness" yaml:"thickness" validate:"gt=0,lte=40"`  // in
	Strength  float64 `json:"strength" yaml:"strength" validate:"gt=0,lte=10000"` // psi
}

// AirNeed is compressed air the kind usually asks for.
type AirNeed struct {
	Pressure float64 `json:"pressure" yaml:"pressure" validate:"gt=0,lte=1000"` // psi
	Flow     float64 `json:"flow" yaml:"flow" validate:"gt=0,lte=10000"`        // cfm
}

// Visit is what to settle before the drive.
type Visit struct {
	// Questions for the seller, in the order to ask them.
	Questions []Question `json:"questions" yaml:"questions" validate:"min=1,dive"`
	Wear      []string   `json:"wear" yaml:"wear" validate:"min=1,dive,required,max=80" say:"yes"`
	// Bring is what is needed besides the instruments the checks name.
	Bring []string `json:"bring" yaml:"bring" validate:"dive,required,max=80" say:"yes"`
}

// Question is put to the seller before the drive.
type Question struct {
	ID  string `json:"id" yaml:"id" validate:"required,slug"`
	Ask string `json:"ask" yaml:"ask" validate:"required,max=200" say:"yes"`
	// Why is for the buyer alone.
	Why string `json:"why,omitempty" yaml:"why" validate:"max=240" say:"yes"`
	// Answers lists what answers it once all of them are told: fields of the listing
	// (AnswerFields) and facts, as fact/<id>. Empty where only the seller can answer.
	Answers []string            `json:"answers,omitempty" yaml:"answers" validate:"max=6,dive,required,max=60"`
	When    map[string][]string `json:"when,omitempty" yaml:"when"`
}
