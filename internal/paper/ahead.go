package paper

import (
	"context"
	"fmt"
	"iter"
	"runtime/debug"
	"sync"
)

// maxAhead is the number of handouts of a class that are laid out at the same time,
// beside the one that is being printed.
const maxAhead = 2

// ahead calls work for each item of a list, for maxAhead of them at a time, and yields
// what it returns in the order of the list. Nothing is begun after ctx ends; what was
// begun has ended when ahead returns. A panic of work is one of the caller.
func ahead[T, R any](ctx context.Context, list []T, work func(T) R) iter.Seq[R] {
	return func(yield func(R) bool) {
		type made struct {
			it    R
			panic string
		}
		var running sync.WaitGroup
		defer running.Wait()
		begin := func(item T) chan made {
			done := make(chan made, 1)
			running.Go(func() {
				defer func() {
					if trouble := recover(); trouble != nil {
						done <- made{panic: fmt.Sprintf("%v\n%s", trouble, debug.Stack())}
					}
				}()
				done <- made{it: work(item)}
			})
			return done
		}
		var begun []chan made
		for ctx.Err() == nil {
			for len(begun) < maxAhead && len(list) > 0 {
				begun, list = append(begun, begin(list[0])), list[1:]
			}
			if len(begun) == 0 {
				return
			}
			next := <-begun[0]
			begun = begun[1:]
			if next.panic != "" {
				panic(next.panic)
			}
			if len(list) > 0 && ctx.Err() == nil {
				begun, list = append(begun, begin(list[0])), list[1:]
			}
			if !yield(next.it) {
				return
			}
		}
	}
}
