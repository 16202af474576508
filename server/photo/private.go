package photo

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"os"
)

// checkPrivate refuses a picture that tells where or with which camera it was taken. The app draws every photo anew,
// which drops all that; this catches a client that does not. Colour and orientation data may stay.
//
// Read are: JPEG segments APP1 (Exif, XMP), PNG chunk eXIf, WebP chunks EXIF and XMP. From memory of the formats'
// specifications: JPEG ITU-T T.81 B.1.1, Exif 2.3 section 4.5, PNG third edition section 11.3, WebP RIFF container.
func checkPrivate(format string, file *os.File) error {
	if _, err := file.Seek(0, io.SeekStart); err != nil {
		return err
	}
	b, err := io.ReadAll(io.LimitReader(file, MaxBytes))
	if err != nil {
		return err
	}
	blocks := map[string]func([]byte) [][]byte{"jpeg": jpegBlocks, "png": pngBlocks, "webp": webpBlocks}[format]
	if blocks == nil {
		return fmt.Errorf("%w: %s: a JPEG, PNG or WebP is expected", ErrPicture, format)
	}
	for _, block := range blocks(b) {
		if tellsMuch(block) {
			return fmt.Errorf("%w: it carries place or camera data: remove it (draw the picture anew) and send it again", ErrPicture)
		}
	}
	return nil
}

// jpegBlocks gives the APP1 segments before the picture itself.
func jpegBlocks(b []byte) (blocks [][]byte) {
	for i := 2; i+4 <= len(b) && b[i] == 0xff; {
		marker, size := b[i+1], int(binary.BigEndian.Uint16(b[i+2:]))
		if marker == 0xff { // a fill byte
			i++
			continue
		}
		if marker == 0xda || marker == 0xd9 || size < 2 || i+2+size > len(b) {
			break
		}
		if marker == 0xe1 {
			blocks = append(blocks, b[i+4:i+2+size])
		}
		i += 2 + size
	}
	return blocks
}

func pngBlocks(b []byte) (blocks [][]byte) {
	for i := 8; i+12 <= len(b); {
		size := int(binary.BigEndian.Uint32(b[i:]))
		if size > len(b)-i-12 {
			break
		}
		if string(b[i+4:i+8]) == "eXIf" {
			blocks = append(blocks, b[i+8:i+8+size])
		}
		i += 12 + size
	}
	return blocks
}

func webpBlocks(b []byte) (blocks [][]byte) {
	for i := 12; i+8 <= len(b); {
		size := int(binary.LittleEndian.Uint32(b[i+4:]))
		if size > len(b)-i-8 {
			break
		}
		if kind := string(b[i : i+4]); kind == "EXIF" || kind == "XMP " {
			blocks = append(blocks, b[i+8:i+8+size])
		}
		i += 8 + size + size&1
	}
	return blocks
}

// Tags of Exif's first directory that name the place, the maker, the model or the owner.
const (
	tagMake      = 0x010f
	tagModel     = 0x0110
	tagArtist    = 0x013b
	tagCopyright = 0x8298
	tagGPS       = 0x8825
)

// tellsMuch looks into one Exif or XMP block. What it cannot read tells too much.
func tellsMuch(block []byte) bool {
	block = bytes.TrimPrefix(block, []byte("Exif\x00\x00"))
	var order binary.ByteOrder
	switch {
	case bytes.HasPrefix(block, []byte("II*\x00")):
		order = binary.LittleEndian
	case bytes.HasPrefix(block, []byte("MM\x00*")):
		order = binary.BigEndian
	default:
		return true
	}
	if len(block) < 8 {
		return true
	}
	at := int(order.Uint32(block[4:]))
	if at < 8 || at+2 > len(block) {
		return true
	}
	for range order.Uint16(block[at:]) {
		if at+14 > len(block) {
			return true
		}
		switch order.Uint16(block[at+2:]) {
		case tagMake, tagModel, tagArtist, tagCopyright, tagGPS:
			return true
		}
		at += 12
	}
	return false
}
