package terminal

// AfterPaste is what the tests of the whole program wait for.
const AfterPaste = afterPaste
