package photo

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
)

const (
	redrawQuality = 82
	// maxUnpacked bounds the points of kinds that unpack to four or eight bytes a point.
	maxUnpacked = 24_000_000
)

// Redraw draws a stranger's JPEG, PNG or WebP anew as a JPEG of at most most points a side, upright, on white, without
// anything else that it carried. Errors are ErrPicture and ErrSize. It may need some 200 MB while it runs: let few run
// at a time.
func Redraw(b []byte, most int) (jpg []byte, err error) {
	if len(b) > MaxBytes {
		return nil, tooLarge(int64(len(b)))
	}
	if len(b) < 12 || mediaType(b[:12]) == "" {
		return nil, fmt.Errorf("%w: a JPEG, PNG or WebP is expected", ErrPicture)
	}
	config, format, err := image.DecodeConfig(bytes.NewReader(b))
	if err != nil {
		return nil, fmt.Errorf("%w: its header cannot be read (%w)", ErrPicture, err)
	}
	points := MaxPixels
	if format != "jpeg" {
		points = maxUnpacked
	}
	if w, h := config.Width, config.Height; w < 1 || h < 1 || w > MaxSide || h > MaxSide || w*h > points {
		return nil, fmt.Errorf("%w: it is %d by %d: 1 to %d a side and at most %d million points are allowed", ErrPicture, w, h, MaxSide, points/1_000_000)
	}
	if format == "jpeg" {
		if err := checkEffort(b); err != nil {
			return nil, err
		}
	}
	picture, _, err := image.Decode(bytes.NewReader(b))
	if err != nil {
		return nil, fmt.Errorf("%w: it cannot be drawn (%w)", ErrPicture, err)
	}
	turn := 1
	if format == "jpeg" {
		turn = orientation(b)
	}
	var out bytes.Buffer
	err = jpeg.Encode(&out, upright(smaller(picture, most), turn), &jpeg.Options{Quality: redrawQuality})
	return out.Bytes(), err
}

// smaller is the picture on white with its longer side at most most; each point is the mean of the area it stands for.
func smaller(src image.Image, most int) *image.RGBA {
	from := src.Bounds()
	w, h := from.Dx(), from.Dy()
	if long := max(w, h); long > most {
		w, h = max(1, w*most/long), max(1, h*most/long)
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	row := image.NewRGBA(image.Rect(0, 0, from.Dx(), 1))
	white := image.NewUniform(color.White)
	narrow, sum := make([]float64, w*3), make([]float64, w*3)
	tall := float64(from.Dy()) / float64(h) // source rows of one row
	y, room := 0, tall
	for sy := range from.Dy() {
		draw.Draw(row, row.Rect, white, image.Point{}, draw.Src)
		draw.Draw(row, row.Rect, src, image.Pt(from.Min.X, from.Min.Y+sy), draw.Over)
		narrowed(row.Pix, from.Dx(), narrow)
		part := min(1, room)
		add(sum, narrow, part)
		if room -= part; room > 1e-9 {
			continue
		}
		if y < h {
			set(out, y, sum, tall)
		}
		clear(sum)
		y, room = y+1, tall
		if rest := 1 - part; rest > 1e-9 {
			add(sum, narrow, rest)
			room -= rest
		}
	}
	if y < h { // the last row, when rounding left a hair of it open
		set(out, y, sum, tall)
	}
	return out
}

// narrowed gives the mean colours of one row of RGBA, len(out)/3 points wide.
func narrowed(pix []byte, wide int, out []float64) {
	w := len(out) / 3
	span := float64(wide) / float64(w)
	clear(out)
	for x := range wide {
		from := float64(x) / span
		at := min(int(from), w-1)
		share := min(1, (float64(at+1)-from)*span)
		for c := range 3 {
			v := float64(pix[x*4+c])
			out[at*3+c] += v * share / span
			if share < 1 && at+1 < w {
				out[(at+1)*3+c] += v * (1 - share) / span
			}
		}
	}
}

func add(sum, row []float64, weight float64) {
	for i, v := range row {
		sum[i] += v * weight
	}
}

func set(out *image.RGBA, y int, sum []float64, rows float64) {
	for x := range len(sum) / 3 {
		o := out.PixOffset(x, y)
		for c := range 3 {
			out.Pix[o+c] = uint8(min(255, sum[x*3+c]/rows+0.5))
		}
		out.Pix[o+3] = 255
	}
}

// upright turns and mirrors a picture as Exif's orientation 1 to 8 says.
func upright(src *image.RGBA, orientation int) *image.RGBA {
	w, h := src.Rect.Dx(), src.Rect.Dy()
	// Where the point (x, y) goes.
	place := map[int]func(x, y int) (int, int){
		2: func(x, y int) (int, int) { return w - 1 - x, y },
		3: func(x, y int) (int, int) { return w - 1 - x, h - 1 - y },
		4: func(x, y int) (int, int) { return x, h - 1 - y },
		5: func(x, y int) (int, int) { return y, x },
		6: func(x, y int) (int, int) { return h - 1 - y, x },
		7: func(x, y int) (int, int) { return h - 1 - y, w - 1 - x },
		8: func(x, y int) (int, int) { return y, w - 1 - x },
	}[orientation]
	if place == nil {
		return src
	}
	size := src.Rect
	if orientation >= 5 {
		size.Max.X, size.Max.Y = h, w
	}
	out := image.NewRGBA(size)
	for y := range src.Rect.Dy() {
		for x := range src.Rect.Dx() {
			tx, ty := place(x, y)
			copy(out.Pix[out.PixOffset(tx, ty):][:4], src.Pix[src.PixOffset(x, y):][:4])
		}
	}
	return out
}
