package main

import "runtime/debug"

// version is that of the module by the information of the build; "devel" where a build has none.
func version() string {
	info, known := debug.ReadBuildInfo()
	if !known || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "devel"
	}
	return info.Main.Version
}
