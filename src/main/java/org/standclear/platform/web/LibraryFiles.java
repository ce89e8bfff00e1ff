package org.standclear.platform.web;

import org.springframework.context.annotation.Configuration;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.springframework.web.servlet.resource.LiteWebJarsResourceResolver;

/**
 * Serves the files of browser libraries under addresses without a version. The framework's own way looks every link of
 * a page up among the files, which took half the time of a page; so its chain is switched off and this stands in.
 */
@Configuration(proxyBeanMethods = false)
class LibraryFiles implements WebMvcConfigurer {

    private static final boolean REMEMBERED = true;

    @Override
    public void addResourceHandlers(ResourceHandlerRegistry registry) {
        registry.addResourceHandler("/webjars/**")
                .addResourceLocations("classpath:/META-INF/resources/webjars/")
                .resourceChain(REMEMBERED)
                .addResolver(new LiteWebJarsResourceResolver());
    }
}
