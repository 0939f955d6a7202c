#include "face.h"

#include <QCoreApplication>

#ifdef JAMBLINE_FONTCONFIG
#include <fontconfig/fontconfig.h>

namespace {

void hideMonospacedTwin() {
  static const FcChar8 rule[] =
      "<?xml version=\"1.0\"?><fontconfig><selectfont><rejectfont><pattern>"
      "<patelt name=\"family\"><string>B612 Mono</string></patelt>"
      "</pattern></rejectfont></selectfont></fontconfig>";
  FcConfig* config = FcInitLoadConfig();
  if (config == nullptr) {
    return;
  }
  if (FcConfigParseAndLoadFromMemory(config, rule, FcTrue) == FcTrue &&
      FcConfigBuildFonts(config) == FcTrue) {
    FcConfigSetCurrent(config);
  } else {
    FcConfigDestroy(config);
  }
}

}  // namespace

Q_COREAPP_STARTUP_FUNCTION(hideMonospacedTwin)
#endif

namespace jambline::theme {

QStringList faceFamilies(const QString& first) {
  return {first, QStringLiteral("Noto Sans"), QStringLiteral("DejaVu Sans")};
}

}  // namespace jambline::theme
