package photo

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/jpeg"
)

// Bare checks a JPEG that is to be shown to strangers and gives it back with nothing but what draws it: no comment,
// no preview, no colour profile, nothing after its end. Exif and XMP are refused rather than dropped: a copy that
// holds them was not drawn anew. most bounds its longer side. Errors are ErrPicture.
//
// Segments: ITU-T T.81 B.1.1 (from memory); kept are JFIF (APP0) and Adobe (APP14), which tell how colours are coded.
func Bare(b []byte, most int) (bare []byte, size image.Point, err error) {
	config, err := jpeg.DecodeConfig(bytes.NewReader(b))
	if err != nil {
		return nil, size, fmt.Errorf("%w: it is not a JPEG (%w)", ErrPicture, err)
	}
	size = image.Pt(config.Width, config.Height)
	if size.X < 1 || size.Y < 1 || size.X > most || size.Y > most {
		return nil, size, fmt.Errorf("%w: it is %d by %d: 1 to %d a side are expected", ErrPicture, size.X, size.Y, most)
	}
	if len(jpegBlocks(b)) > 0 {
		return nil, size, fmt.Errorf("%w: it carries place or camera data: draw it anew and send it again", ErrPicture)
	}
	if err := checkEffort(b); err != nil {
		return nil, size, err
	}
	if bare, err = drawing(b); err != nil {
		return nil, size, err
	}
	// What shows nothing in the end is better refused here than at the seller's.
	if _, err := jpeg.Decode(bytes.NewReader(bare)); err != nil {
		return nil, size, fmt.Errorf("%w: it cannot be drawn (%w)", ErrPicture, err)
	}
	return bare, size, nil
}

// drawing walks the segments, scans included: a progressive picture has tables between its scans.
func drawing(b []byte) ([]byte, error) {
	broken := fmt.Errorf("%w: it is cut off or damaged", ErrPicture)
	out := append(make([]byte, 0, len(b)), 0xff, 0xd8)
	for i := 2; ; {
		if i+2 > len(b) || b[i] != 0xff {
			return nil, broken
		}
		marker := b[i+1]
		switch {
		case marker == 0xff: // a fill byte
			i++
			continue
		case marker == 0xd9:
			return append(out, 0xff, 0xd9), nil
		case i+4 > len(b), marker <= 0x01, marker >= 0xd0 && marker <= 0xd8: // the latter hold nothing, so nothing may follow them
			return nil, broken
		}
		end := i + 2 + int(binary.BigEndian.Uint16(b[i+2:]))
		if end < i+4 || end > len(b) {
			return nil, broken
		}
		kept := marker != 0xfe && (marker < 0xe0 || marker > 0xef) || marker == 0xe0 && bytes.HasPrefix(b[i+4:end], []byte("JFIF\x00"))
		if marker == 0xee && end >= i+16 && bytes.HasPrefix(b[i+4:end], []byte("Adobe")) {
			out = append(append(out, 0xff, 0xee, 0, 14), b[i+4:i+16]...) // without what may stand behind
		}
		if marker == 0xda {
			end = scanEnd(b, end)
		}
		if kept && marker == 0xe0 {
			out = append(out, 0xff, 0xe0, 0, 16)
			if end < i+18 {
				return nil, broken
			}
			out = append(append(out, b[i+4:i+16]...), 0, 0) // without its thumbnail
		} else if kept {
			out = append(out, b[i:end]...)
		}
		i = end
	}
}

// scanEnd is where the coded data of a scan ends: before the first marker that is no stuffed byte and no restart.
func scanEnd(b []byte, at int) int {
	for ; at+1 < len(b); at++ {
		if next := b[at+1]; b[at] == 0xff && next != 0 && (next < 0xd0 || next > 0xd7) {
			return at
		}
	}
	return len(b)
}
