//go:build js && wasm

// Command wasm is the engine for the browser: the worker opens it once with the
// catalogue and then asks by name, bytes in and bytes out.
package main

import (
	"syscall/js"

	"asfound/rubrics/door"
)

func main() {
	var d *door.Door
	js.Global().Set("asfoundOpen", js.FuncOf(func(_ js.Value, args []js.Value) any {
		opened, err := door.Open(take(args[0]))
		if err != nil {
			return err.Error()
		}
		d = opened
		return nil
	}))
	js.Global().Set("asfoundCall", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if d == nil {
			return give([]byte(`{"error":"the engine is not open yet"}`))
		}
		return give(d.Call(args[0].String(), take(args[1])))
	}))
	select {}
}

func take(v js.Value) []byte {
	b := make([]byte, v.Get("length").Int())
	js.CopyBytesToGo(b, v)
	return b
}

func give(b []byte) js.Value {
	v := js.Global().Get("Uint8Array").New(len(b))
	js.CopyBytesToJS(v, b)
	return v
}
