# Reads a Cobertura report; prints lines and branches that tests reach, a folder of the generator at a time.
# With -v of=FOLDER also what they miss there: place, branches taken and there are, "line" where none of it ran.

function text(name,   from, rest) {
  from = index($0, " " name "=\"")
  if (from == 0) return ""
  rest = substr($0, from + length(name) + 3)
  return substr(rest, 1, index(rest, "\"") - 1)
}

/<class / {
  file = text("filename")
  gsub(/\\/, "/", file)
  # What source generators write lies under obj/ and is nobody's to test.
  known = match(file, /\/generator\/[A-Z][A-Za-z]*\//)
  folder = substr(file, RSTART + 11, RLENGTH - 12)
  file = substr(file, RSTART + 1)
}

# Every line stands twice: below its method, which is passed over, and below its class.
/<method / { inMethod = 1 }
/<\/method>/ { inMethod = 0 }

known && !inMethod && /<line / {
  lines[folder]++
  hit = text("hits") > 0
  run[folder] += hit
  taken = there = 0
  if (text("branch") == "True") {
    split(text("condition-coverage"), part, /[(\/)]/)
    taken = part[2]
    there = part[3]
    branches[folder] += there
    went[folder] += taken
  }
  if (folder == of && (!hit || taken < there)) {
    printf "%s:%d\t%s%s\n", file, text("number"), there ? taken "/" there : "", hit ? "" : " line"
  }
}

END {
  printf "%-14s %8s %8s %7s %9s %8s %7s\n", "folder", "lines", "run", "%", "branches", "taken", "%"
  for (folder in lines) {
    sort = "LC_ALL=C sort"
    printf "%-14s %8d %8d %7.2f %9d %8d %7.2f\n", folder, lines[folder], run[folder], 100 * run[folder] / lines[folder],
      branches[folder], went[folder], branches[folder] ? 100 * went[folder] / branches[folder] : 100 | sort
  }
}
