package limit

// Error is a value a limit refuses: which quantity, what is wrong with it, what
// would be right. Quantity is empty where the fault lies with the whole call.
type Error struct {
	Quantity string
	What     string
	Right    string
}

func (e *Error) Error() string {
	s := e.What + ": " + e.Right
	if e.Quantity != "" {
		s = e.Quantity + ": " + s
	}
	return s
}

func refuse(quantity, what, right string) *Error {
	return &Error{Quantity: quantity, What: what, Right: right}
}
