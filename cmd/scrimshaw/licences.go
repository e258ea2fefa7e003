package main

import _ "embed"

// licences are the notices of all that is linked into the program, which ask to travel with it. A test holds them to
// the modules and writes them.
//
//go:embed licences.txt
var licences string
