package pdf

import (
	_ "embed"
	"encoding/binary"
	"sync"
)

// The faces are DejaVu Sans Condensed, cut by `go run ./cmd/dev fonts` to the
// scripts that papers show; fonts/LICENSE is theirs.
var (
	//go:embed fonts/regular.ttf
	regularTTF []byte
	//go:embed fonts/bold.ttf
	boldTTF []byte
)

// face is what layout asks of a font: which characters it has, and their widths.
type face struct {
	family, weight string
	ttf            []byte
	read           sync.Once
	// advance of a character in thousandths of the size, plus one; 0 where the face
	// has none.
	advance []uint16
}

var (
	regular = &face{family: "text", ttf: regularTTF}
	bold    = &face{family: "text", weight: "B", ttf: boldTTF}
)

func (f *face) has(r rune) bool {
	f.read.Do(f.load)
	return r >= 0 && int(r) < len(f.advance) && f.advance[r] != 0
}

// width of a character in thousandths of the size.
func (f *face) width(r rune) float64 {
	if !f.has(r) {
		return 0
	}
	return float64(f.advance[r] - 1)
}

// load reads the character map (format 4) and the widths, rounded as the library
// rounds what it writes, so that lines end where they were reckoned to.
func (f *face) load() {
	f.advance = make([]uint16, 1<<16)
	u16 := func(at int) int { return int(binary.BigEndian.Uint16(f.ttf[at:])) }
	u32 := func(at int) int { return int(binary.BigEndian.Uint32(f.ttf[at:])) }
	table := map[string]int{}
	for i := range u16(4) {
		at := 12 + 16*i
		table[string(f.ttf[at:at+4])] = u32(at + 8)
	}
	em, metrics := u16(table["head"]+18), u16(table["hhea"]+34)
	cmap := table["cmap"] + u32(table["cmap"]+8)
	segments := u16(cmap+6) / 2
	for s := range segments {
		end, start := u16(cmap+14+2*s), u16(cmap+16+2*segments+2*s)
		delta := u16(cmap + 16 + 4*segments + 2*s)
		for c := start; c <= end && c < 0xffff; c++ {
			glyph := (c + delta) & 0xffff
			if glyph == 0 {
				continue
			}
			width := u16(table["hmtx"] + 4*min(glyph, metrics-1))
			f.advance[c] = uint16((width*1000+em/2)/em) + 1
		}
	}
}
