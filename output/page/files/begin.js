"use strict";

bench.press.begin();
bench.table.begin();
bench.keys.begin();
bench.parts.begin();
bench.desk.begin();
