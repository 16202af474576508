package record

import (
	"errors"
	"fmt"
	"strings"
)

// Widths of a stamp's parts in hex digits, and the bounds that hold for them.
const (
	timeDigits    = 12
	counterDigits = 4
	deviceDigits  = 16
	stampDigits   = timeDigits + counterDigits + deviceDigits

	// MaxTime is the last millisecond of the year 9999 (Unix epoch, UTC), the latest time a stamp may carry.
	MaxTime = 253402300799999
	// MaxCounter is the largest counter within one millisecond.
	MaxCounter = 0xffff
	// MaxAhead is how far (ms) a stamp may be ahead of the receiver's time. The past is not bounded.
	MaxAhead = 60_000
)

// Stamp is a hybrid logical clock reading with its device: 12 hex digits of ms since the Unix epoch, 4 of counter,
// 16 of device id, lower-case. Order of bytes is order of stamps. "" stands for no stamp where one may be missing.
//
// Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical Physical Clocks", OPODIS 2014,
// DOI 10.1007/978-3-319-14472-6_2; fixed-width hex so that every language and index sorts it alike.
type Stamp string

// ErrStamp is what every error about a malformed stamp is.
var ErrStamp = errors.New("not a stamp")

// ErrDevice is what every error about a malformed device id is.
var ErrDevice = errors.New("not a device id")

// NewStamp puts a stamp together. ms is 0 to MaxTime.
func NewStamp(ms int64, counter int, device string) (Stamp, error) {
	if err := CheckDevice(device); err != nil {
		return "", err
	}
	if ms < 0 || ms > MaxTime {
		return "", fmt.Errorf("%w: its time of %d ms is out of range: 1970 to the end of 9999", ErrStamp, ms)
	}
	if counter < 0 || counter > MaxCounter {
		return "", fmt.Errorf("%w: its counter %d is out of range: 0 to %d", ErrStamp, counter, MaxCounter)
	}
	const digits = "0123456789abcdef"
	var b [stampDigits]byte
	head := uint64(ms)<<16 | uint64(counter)
	for i := timeDigits + counterDigits - 1; i >= 0; i-- {
		b[i] = digits[head&15]
		head >>= 4
	}
	copy(b[timeDigits+counterDigits:], device)
	return Stamp(b[:]), nil
}

// Check tells whether s is a whole and well-formed stamp; "" is not.
func (s Stamp) Check() error {
	if len(s) != stampDigits {
		return fmt.Errorf("%w: %q has %d characters: 32 are expected", ErrStamp, clip(string(s)), len(s))
	}
	if !isHex(string(s)) {
		return fmt.Errorf("%w: %q: only the digits 0-9 and a-f are expected", ErrStamp, clip(string(s)))
	}
	if s.Time() > MaxTime {
		return fmt.Errorf("%w: %q lies after the year 9999", ErrStamp, string(s))
	}
	if err := CheckDevice(s.Device()); err != nil {
		return fmt.Errorf("%w: %q: %w", ErrStamp, string(s), err)
	}
	return nil
}

// Time is the stamp's ms since the Unix epoch; 0 for the empty stamp.
func (s Stamp) Time() int64 { return int64(s.number(0, timeDigits)) }

// Counter is the stamp's counter within its millisecond.
func (s Stamp) Counter() int { return int(s.number(timeDigits, timeDigits+counterDigits)) }

// Device is the stamp's device id, 16 hex digits; "" for a stamp that is not whole.
func (s Stamp) Device() string {
	if len(s) != stampDigits {
		return ""
	}
	return string(s[timeDigits+counterDigits:])
}

// Ahead tells whether s is more than MaxAhead ahead of now (ms since the Unix epoch).
func (s Stamp) Ahead(now int64) bool { return s.Time() > now+MaxAhead }

// CheckDevice tells whether id is a device id: 16 lower-case hex digits, not all zero.
func CheckDevice(id string) error {
	if len(id) != deviceDigits || !isHex(id) {
		return fmt.Errorf("%w: %q: 16 digits 0-9 and a-f are expected", ErrDevice, clip(id))
	}
	if strings.Trim(id, "0") == "" {
		return fmt.Errorf("%w: all zero: 64 random bits are expected", ErrDevice)
	}
	return nil
}

func (s Stamp) number(from, to int) uint64 {
	if len(s) != stampDigits {
		return 0
	}
	var n uint64
	for _, c := range []byte(s[from:to]) {
		n <<= 4
		if c >= 'a' {
			n |= uint64(c-'a'+10) & 15
		} else {
			n |= uint64(c-'0') & 15
		}
	}
	return n
}

func isHex(s string) bool {
	for _, c := range []byte(s) {
		if (c < '0' || c > '9') && (c < 'a' || c > 'f') {
			return false
		}
	}
	return true
}

// clip shortens a stranger's text for an error message.
func clip(s string) string {
	const most = 60
	if len(s) <= most {
		return s
	}
	return strings.ToValidUTF8(s[:most], "") + "…"
}
