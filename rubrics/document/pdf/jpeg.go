package pdf

import (
	"bytes"
	"encoding/binary"
	"image/color"
	"image/jpeg"
)

// picture is a photo as it is put into the file: a JPEG whose pixels are untouched.
type picture struct {
	jpeg          []byte
	width, height int
}

// readJPEG takes a whole JPEG of one or three colours of 8 bits, and leaves out all
// that is no picture: EXIF with place and device, comments, thumbnails. It decodes
// no pixel: a file that is cut off is told by its missing end.
func readJPEG(src []byte) (picture, bool) {
	if len(src) < 4 || src[0] != 0xff || src[1] != 0xd8 {
		return picture{}, false
	}
	p := picture{jpeg: append(make([]byte, 0, len(src)), 0xff, 0xd8)}
	scanned := false
	for at := 2; at+1 < len(src); {
		if src[at] != 0xff {
			return picture{}, false
		}
		marker := src[at+1]
		if marker == 0xff { // padding
			at++
			continue
		}
		if marker == 0xd9 {
			p.jpeg = append(p.jpeg, 0xff, 0xd9)
			return p, scanned && p.width > 0 && p.height > 0 && known(p.jpeg)
		}
		if at+4 > len(src) || marker <= 0x01 || marker >= 0xd0 && marker <= 0xd8 { // the latter hold nothing, so nothing may follow them
			return picture{}, false
		}
		end := at + 2 + int(binary.BigEndian.Uint16(src[at+2:]))
		if end < at+4 || end > len(src) {
			return picture{}, false
		}
		segment := src[at:end]
		switch {
		case marker == 0xc0 || marker == 0xc1 || marker == 0xc2: // frames that PDF readers know
			if len(segment) < 10 || segment[4] != 8 || p.width != 0 {
				return picture{}, false
			}
			p.height, p.width = int(binary.BigEndian.Uint16(segment[5:])), int(binary.BigEndian.Uint16(segment[7:]))
			if colours := segment[9]; colours != 1 && colours != 3 {
				return picture{}, false
			}
		case marker >= 0xc3 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc:
			return picture{}, false
		}
		switch {
		case marker < 0xe0:
			p.jpeg = append(p.jpeg, segment...)
		case marker == 0xee && len(segment) >= 16 && bytes.HasPrefix(segment[4:], []byte("Adobe")):
			// Of the APPn only Adobe's, which tells how colours are coded, without what may stand behind.
			p.jpeg = append(append(p.jpeg, 0xff, 0xee, 0, 14), segment[4:16]...)
		}
		at = end
		if marker != 0xda {
			continue
		}
		scanned = true
		for from := at; ; at++ { // coded data, up to a marker that is none of its own
			if at+1 >= len(src) {
				return picture{}, false
			}
			if src[at] == 0xff && src[at+1] != 0 && (src[at+1] < 0xd0 || src[at+1] > 0xd7) {
				p.jpeg = append(p.jpeg, src[from:at]...)
				break
			}
		}
	}
	return picture{}, false
}

// known tells that the library takes the picture: it would refuse the whole paper
// for one that it does not.
func known(src []byte) bool {
	config, err := jpeg.DecodeConfig(bytes.NewReader(src))
	return err == nil && (config.ColorModel == color.GrayModel || config.ColorModel == color.YCbCrModel)
}
