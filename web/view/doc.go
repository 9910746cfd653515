// Package view renders the pages: templ components, each beside the model that
// it shows. It works nothing out of its own: models are made from what the app
// returns.
package view
