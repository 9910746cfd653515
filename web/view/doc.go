// Package view renders the pages: templ components, each beside the model that
// it shows. It works nothing out by itself: a model is made from what the app
// returns.
package view
