// Read before the page is: with a script one part of it is shown at a time.
"use strict";
document.documentElement.className = "js";
