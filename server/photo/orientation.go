package photo

import (
	"bytes"
	"encoding/binary"
)

// orientation is how a JPEG's Exif says the picture must be turned, 1 (as it is) to 8; 1 where it says nothing that
// can be read. Tag 0x0112, a SHORT in the first directory (Exif 2.3, table 4; from memory).
func orientation(b []byte) int {
	const tagOrientation, short = 0x0112, 3
	for _, block := range jpegBlocks(b) {
		tiff, isExif := bytes.CutPrefix(block, []byte("Exif\x00\x00"))
		if !isExif || len(tiff) < 8 {
			continue
		}
		var order binary.ByteOrder = binary.BigEndian
		if tiff[0] == 'I' {
			order = binary.LittleEndian
		}
		at := uint64(order.Uint32(tiff[4:]))
		if at < 8 || at+2 > uint64(len(tiff)) {
			continue
		}
		entries := order.Uint16(tiff[at:])
		for at += 2; entries > 0 && at+12 <= uint64(len(tiff)); at, entries = at+12, entries-1 {
			if order.Uint16(tiff[at:]) != tagOrientation || order.Uint16(tiff[at+2:]) != short {
				continue
			}
			if turn := order.Uint16(tiff[at+8:]); turn >= 1 && turn <= 8 {
				return int(turn)
			}
		}
	}
	return 1
}
