// Package spec knows the model file: its fields, where each stands in the
// text, and every fault that can be told without knowing the trade's rules.
//
// It does not resolve anything: defaults that depend on other values, and all
// rules of the trade, belong to package door.
package spec
