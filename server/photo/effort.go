package photo

import (
	"bytes"
	"encoding/binary"
	"fmt"
)

// Bounds of a progressive JPEG, which is kept whole in numbers of four bytes while its scans go over it again and
// again: a few thousand bytes can ask for gigabytes, or for minutes. Encoders write some ten scans.
const (
	maxCoefficients = 48_000_000
	maxScans        = 100
)

// checkEffort refuses what takes more memory or work to draw than a picture is worth. ErrPicture.
//
// Frames: ITU-T T.81 B.2.2 (from memory). Markers are looked for as the decoder does, which passes over what stands
// between segments.
func checkEffort(b []byte) error {
	for i := 2; i+1 < len(b); {
		if b[i] != 0xff || b[i+1] == 0xff {
			i++
			continue
		}
		marker := b[i+1]
		i += 2
		if marker == 0 || marker >= 0xd0 && marker <= 0xd7 {
			continue
		}
		if marker == 0xd9 || marker == 0xda || i+2 > len(b) {
			return nil
		}
		end := i + int(binary.BigEndian.Uint16(b[i:]))
		if marker != 0xc2 || end > len(b) || end < i+8 {
			i = max(end, i+2)
			continue
		}
		if n := bytes.Count(b, []byte{0xff, 0xda}); n > maxScans {
			return fmt.Errorf("%w: it is drawn in %d scans: at most %d are taken", ErrPicture, n, maxScans)
		}
		if n := coefficients(b[i+2 : end]); n > maxCoefficients {
			return fmt.Errorf("%w: as a progressive JPEG it is too large to be drawn: make it smaller", ErrPicture)
		}
		return nil
	}
	return nil
}

// coefficients are how many a frame's picture is kept in: of each colour its share of the blocks.
func coefficients(frame []byte) int {
	high, wide := int(binary.BigEndian.Uint16(frame[1:])), int(binary.BigEndian.Uint16(frame[3:]))
	most, sum := 1, 0
	for c := 6; c+3 <= len(frame); c += 3 {
		n := int(frame[c+1]>>4) * int(frame[c+1]&15)
		most, sum = max(most, n), sum+n
	}
	return high * wide / most * sum
}
