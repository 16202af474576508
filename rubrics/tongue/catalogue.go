package tongue

import "sync"

var rubricNames = sync.OnceValue(func() map[string]bool { return map[string]bool{} })
