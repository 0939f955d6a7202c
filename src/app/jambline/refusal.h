// app/jambline/refusal.h: the window that stands instead of the program when the shop's folder
// cannot be opened: what happened, what is kept, what to do; codes and paths behind Details.
// Threads: GUI thread.
#pragma once

#include <QQmlApplicationEngine>
#include <filesystem>
#include <memory>

#include "base/error.h"

namespace jambline::app {

// The window is the only root object; there is none when it could not be made.
std::unique_ptr<QQmlApplicationEngine> refusal_window(const Error& error,
                                                      const std::filesystem::path& folder,
                                                      bool dark);

}  // namespace jambline::app
