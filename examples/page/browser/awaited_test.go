package browser

import "github.com/chromedp/cdproto/runtime"

// awaited has an expression that is a promise waited for.
func awaited(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }
