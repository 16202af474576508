package printing

import (
	"encoding/json"
	"image"
	"image/color"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"asfound/rubrics/document/form"
)

// TestQR: another library reads what was written.
func TestQR(t *testing.T) {
	for _, text := range []string{"https://example.invalid/s/AbC-123_xyz", "a", strings.Repeat("long ", 400), "año 日本"} {
		rows, err := QR(text)
		if err != nil {
			t.Fatal(err)
		}
		const scale, quiet = 4, 4
		side := (len(rows) + 2*quiet) * scale
		picture := image.NewGray(image.Rect(0, 0, side, side))
		for y := range side {
			for x := range side {
				r, c := y/scale-quiet, x/scale-quiet
				dark := r >= 0 && r < len(rows) && c >= 0 && c < len(rows) && rows[r][c]
				if !dark {
					picture.SetGray(x, y, color.Gray{Y: 255})
				}
			}
		}
		bitmap, err := gozxing.NewBinaryBitmapFromImage(picture)
		if err != nil {
			t.Fatal(err)
		}
		got, err := qrcode.NewQRCodeReader().Decode(bitmap, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_PURE_BARCODE: true, gozxing.DecodeHintType_CHARACTER_SET: "UTF-8"})
		if err != nil {
			t.Fatalf("%.30q is not read: %v", text, err)
		}
		if got.GetText() != text {
			t.Errorf("%.30q is read as %.30q", text, got.GetText())
		}
	}
	for _, text := range []string{"", strings.Repeat("x", 2332)} {
		if _, err := QR(text); err == nil {
			t.Errorf("%d bytes are taken", len(text))
		}
	}
	if _, err := QR(strings.Repeat("x", 2331)); err != nil {
		t.Error(err)
	}
}

func TestCall(t *testing.T) {
	ask := func(name string, q any, photo func(int) []byte) (string, error) {
		argument, err := json.Marshal(q)
		if err != nil {
			t.Fatal(err)
		}
		out, err := Call(name, argument, photo)
		return string(out), err
	}
	doc := form.Document{Title: "日", Blocks: []form.Block{{Kind: "photos", Photos: []form.Photo{{Key: "b", Caption: "c"}}}}}
	asked := -1
	out, err := ask("pdf", PDFRequest{doc, "a4", []string{"a", "b"}}, func(i int) []byte { asked = i; return nil })
	if err != nil || !strings.HasPrefix(out, "%PDF-") || asked != 1 {
		t.Errorf("pdf: %v, photo %d was asked for, want 1", err, asked)
	}
	if out, err := ask("uncovered", UncoveredRequest{doc}, nil); err != nil || out != `["日"]` {
		t.Errorf("uncovered: %s, %v", out, err)
	}
	if out, err := ask("qr", QRRequest{"x"}, nil); err != nil || !strings.HasPrefix(out, "[[true,true,true,true,true,true,true,false") {
		t.Errorf("qr: %.40s, %v", out, err)
	}
	for _, c := range []struct{ name, argument, want string }{
		{"pdf", `{"page":"a5"}`, `page "a5": say letter or a4`},
		{"pdf", `{`, "the document cannot be read: unexpected end of JSON input"},
		{"fax", `{}`, `no call is named "fax"`},
	} {
		if _, err := Call(c.name, []byte(c.argument), nil); err == nil || err.Error() != c.want {
			t.Errorf("%s %s: %v, want %s", c.name, c.argument, err, c.want)
		}
	}
	// A fault while drawing is told, not passed on.
	if _, err := ask("pdf", PDFRequest{doc, "a4", []string{"b"}}, func(int) []byte { panic("gone") }); err == nil || !strings.Contains(err.Error(), "a fault of its own (gone)") {
		t.Errorf("a fault: %v", err)
	}
}
