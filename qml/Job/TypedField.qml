// TypedField: a field of a form: what the form refuses of it is said at it. form, field: its name there.
import QtQuick
import Jambline.Theme
import Jambline.Screens

FaceField {
    required property Form form
    required property string field

    wrong: form.wrongField === field ? form.wrongWords : ""
}
