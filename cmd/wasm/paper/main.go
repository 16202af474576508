//go:build js && wasm

// Command paper is the module that draws documents as PDF; it
// is loaded only where something is handed over.
package main

import (
	"syscall/js"

	"asfound/rubrics/printing"
)

// asfoundPaper(name, argument, ...photos) answers bytes, or an error as a text.
func main() {
	js.Global().Set("asfoundPaper", js.FuncOf(func(_ js.Value, args []js.Value) any {
		out, err := printing.Call(args[0].String(), bytes(args[1]), func(i int) []byte {
			if i+2 >= len(args) {
				return nil
			}
			return bytes(args[i+2])
		})
		if err != nil {
			return err.Error()
		}
		v := js.Global().Get("Uint8Array").New(len(out))
		js.CopyBytesToJS(v, out)
		return v
	}))
	select {}
}

func bytes(v js.Value) []byte {
	out := make([]byte, v.Get("length").Int())
	js.CopyBytesToGo(out, v)
	return out
}
