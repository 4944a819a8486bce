package console

// Version is what --version answers. A build can set it with -ldflags -X.
var Version = "0.1.0"
