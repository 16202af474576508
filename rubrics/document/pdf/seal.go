package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

var errStrange = errors.New("the PDF library wrote a file of another form than expected")

// seal writes the library's file again, object by object: photos in one order, a
// full character map, the structure for screen readers, and a catalogue and
// information that hold title and language alone.
func (l *layout) seal(raw []byte) ([]byte, error) {
	objects, err := split(raw)
	if err != nil {
		return nil, err
	}
	if len(objects) < 2*len(l.pages)+5 {
		return nil, errStrange
	}
	objects = objects[:len(objects)-2] // the library's information and catalogue
	if err := sortPhotos(objects); err != nil {
		return nil, err
	}
	for i := range l.pages { // object 1 is the tree, 2 the resources, then page and content in turns
		page := &objects[2+2*i]
		changed := bytes.Replace(*page, []byte("/Resources 2 0 R"), fmt.Appendf(nil, "/Resources 2 0 R\n/StructParents %d\n/Tabs /S", i), 1)
		if len(changed) == len(*page) || !bytes.HasPrefix(*page, []byte("<</Type /Page\n")) {
			return nil, errStrange
		}
		*page = changed
	}
	maps := 0
	for i, o := range objects {
		if bytes.Contains(o[:min(len(o), 400)], []byte("/CMapName /Adobe-Identity-UCS")) {
			objects[i] = characterMap()
			maps++
		}
	}
	if maps != 2 {
		return nil, errStrange
	}
	objects = l.structured(objects)
	objects = append(objects, []byte("<</Title "+hexText(l.title)+">>"))
	information := len(objects)
	catalog := fmt.Sprintf("<</Type /Catalog\n/Pages 1 0 R\n/StructTreeRoot %d 0 R\n/MarkInfo <</Marked true>>\n/ViewerPreferences <</DisplayDocTitle true>>", information-1)
	if l.language != "" {
		catalog += "\n/Lang (" + l.language + ")"
	}
	objects = append(objects, []byte(catalog+">>"))
	var out bytes.Buffer
	out.Grow(len(raw) + len(raw)/8)
	out.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	offsets := make([]int, len(objects))
	for i, o := range objects {
		offsets[i] = out.Len()
		fmt.Fprintf(&out, "%d 0 obj\n", i+1)
		out.Write(o)
		out.WriteString("\nendobj\n")
	}
	start := out.Len()
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, at := range offsets {
		fmt.Fprintf(&out, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&out, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, len(objects), information, start)
	return out.Bytes(), nil
}

// split takes a file apart: the bodies of its objects, number 1 first.
func split(raw []byte) ([][]byte, error) {
	at := bytes.LastIndex(raw, []byte("startxref\n"))
	if at < 0 {
		return nil, errStrange
	}
	number, _, _ := strings.Cut(string(raw[at+len("startxref\n"):]), "\n")
	table, err := strconv.Atoi(number)
	if err != nil || table <= 0 || table >= at {
		return nil, errStrange
	}
	lines := strings.Split(string(raw[table:at]), "\n")
	if len(lines) < 3 || lines[0] != "xref" {
		return nil, errStrange
	}
	count, err := strconv.Atoi(strings.TrimPrefix(lines[1], "0 "))
	if err != nil || count < 2 || len(lines) < 2+count {
		return nil, errStrange
	}
	starts := make([]int, count)
	for i := 1; i < count; i++ {
		if starts[i], err = strconv.Atoi(strings.TrimSuffix(lines[2+i], " 00000 n ")); err != nil || starts[i] >= table {
			return nil, errStrange
		}
	}
	ends := slices.Clone(starts)
	ends[0] = table
	slices.Sort(ends)
	objects := make([][]byte, count-1)
	for i := 1; i < count; i++ {
		k, _ := slices.BinarySearch(ends, starts[i])
		body := raw[starts[i]:ends[k+1]]
		body, head := bytes.CutPrefix(body, fmt.Appendf(nil, "%d 0 obj\n", i))
		body, tail := bytes.CutSuffix(body, []byte("\nendobj\n"))
		if !head || !tail {
			return nil, errStrange
		}
		objects[i-1] = body
	}
	return objects, nil
}

// sortPhotos puts photos in the order of their bytes: the library writes those of
// equal width in any.
func sortPhotos(objects [][]byte) error {
	var slots []int
	for i, o := range objects {
		if bytes.HasPrefix(o, []byte("<</Type /XObject\n/Subtype /Image\n")) {
			slots = append(slots, i)
		}
	}
	order := slices.Clone(slots)
	slices.SortFunc(order, func(a, b int) int { return bytes.Compare(objects[a], objects[b]) })
	bodies := make([][]byte, len(order))
	moved := map[string]string{}
	for k, i := range order {
		bodies[k] = objects[i]
		moved[strconv.Itoa(i+1)] = strconv.Itoa(slots[k] + 1)
	}
	for k, body := range bodies {
		objects[slots[k]] = body
	}
	lines := strings.Split(string(objects[1]), "\n")
	found := 0
	for i, line := range lines {
		name, rest, ok := strings.Cut(line, " ")
		if number, tail, two := strings.Cut(rest, " "); ok && two && tail == "0 R" && strings.HasPrefix(name, "/I") && moved[number] != "" {
			lines[i] = name + " " + moved[number] + " 0 R"
			found++
		}
	}
	if found < len(slots) {
		return errStrange
	}
	objects[1] = []byte(strings.Join(lines, "\n"))
	return nil
}

// characterMap tells which characters were typed for those that are drawn: each
// itself, but for the written forms of Arabic (ISO 32000-1, 9.10.3).
func characterMap() []byte {
	var ranges, single []string
	for high := range 0x100 {
		if high >= 0xd8 && high < 0xe0 || high == 0xfb || high == 0xfc || high == 0xfd || high == 0xfe {
			continue
		}
		ranges = append(ranges, fmt.Sprintf("<%02X00> <%02XFF> <%02X00>", high, high, high))
	}
	for r := rune(0xfb00); r <= 0xfeff; r++ {
		if !regular.has(r) && !bold.has(r) {
			continue
		}
		to := fmt.Sprintf("%04X", r)
		if letters := typedLetters(r); letters != nil {
			to = ""
			for _, l := range letters {
				to += fmt.Sprintf("%04X", l)
			}
		}
		single = append(single, fmt.Sprintf("<%04X> <%s>", r, to))
	}
	text := "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo\n<</Registry (Adobe)\n/Ordering (UCS)\n/Supplement 0\n>> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n"
	for chunk := range slices.Chunk(ranges, 100) {
		text += fmt.Sprintf("%d beginbfrange\n%s\nendbfrange\n", len(chunk), strings.Join(chunk, "\n"))
	}
	for chunk := range slices.Chunk(single, 100) {
		text += fmt.Sprintf("%d beginbfchar\n%s\nendbfchar\n", len(chunk), strings.Join(chunk, "\n"))
	}
	text += "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend"
	return fmt.Appendf(nil, "<</Length %d>>\nstream\n%s\nendstream", len(text), text)
}
