// Joins the words that are not empty.
.pragma library

function join(parts, mark) {
    return parts.filter(part => part !== "").join(mark);
}
