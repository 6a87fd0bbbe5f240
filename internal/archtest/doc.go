// Package archtest holds the rules of the house as tests: the import table of
// ARCHITECTURE.md is the policy, and the source is held against it.
package archtest
