//go:build js && wasm

// Command editor is the module for own rubrics: it reads, writes and checks rubric
// files, and is loaded only where they are edited.
package main

import (
	"syscall/js"

	"asfound/rubrics/editing"
)

func main() {
	var editor editing.Editor
	js.Global().Set("asfoundEdit", js.FuncOf(func(_ js.Value, args []js.Value) any {
		argument := make([]byte, args[1].Get("length").Int())
		js.CopyBytesToGo(argument, args[1])
		out := editor.Call(args[0].String(), argument)
		v := js.Global().Get("Uint8Array").New(len(out))
		js.CopyBytesToJS(v, out)
		return v
	}))
	select {}
}
